// One warning: how much hangs on it, what is the case, what follows, and the one certain fix where there is
// one.
#pragma once

#include <QAbstractButton>
#include <QString>

class QPushButton;

namespace bolthole {

/// What a row says. Texts are whole sentences' parts as a person reads them; `fix` empty: there is none.
struct WarningWords {
    QString badge;        ///< "Danger"; upper or lower case as written
    bool isGrave = true;  ///< filled badge, else an outlined one
    QString cause;
    QString follows;
    QString fix;

    bool operator==(const WarningWords&) const = default;
};

/// Clicked, or Enter or Space with the focus: the field is wanted. Arrow keys go to the rows around it. As
/// high as its words need at its width.
class WarningRow : public QAbstractButton {
    Q_OBJECT
  public:
    WarningRow(const WarningWords& words, QWidget* parent);

  signals:
    void fixRequested();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    QPushButton* fix_ = nullptr;
};

}  // namespace bolthole
