// Asks for the name and note of a kept setup.
#pragma once

#include <QDialog>
#include <string>

class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace bolthole {

/// What a kept setup is called, and what there is to say of it.
struct KeptWords {
    std::string name;
    std::string date;  ///< shown, not asked
    std::string note;
};

/// Name and note, the date shown. A blank name can't be taken.
class KeepDialog : public QDialog {
    Q_OBJECT
  public:
    /// `title`: of the window; `action`: what the button says.
    KeepDialog(const QString& title, const QString& action, const KeptWords& words, QWidget* parent);

    /// What was typed, blanks around it left off.
    [[nodiscard]] KeptWords words() const;

  private:
    void refresh();

    KeptWords before_;
    QLineEdit* name_;
    QPlainTextEdit* note_;
    QLabel* problem_;
    QPushButton* take_;
};

}  // namespace bolthole
