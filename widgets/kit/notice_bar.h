// One line across the top of the window for what went wrong or was done, until it is dismissed.
#pragma once

#include <QFrame>

class QLabel;

namespace bolthole {

/// Hidden until say() is called. Never blocks, never steals the focus; Escape dismisses it while it has the
/// focus.
class NoticeBar : public QFrame {
    Q_OBJECT
  public:
    explicit NoticeBar(QWidget* parent = nullptr);

    /// What went wrong, or needs a person's eye.
    void say(const QString& text);
    /// What was done and is as it should be: quietly, without the color of a problem.
    void tell(const QString& text);
    [[nodiscard]] QString text() const;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void show(const QString& text, bool isQuiet);

    QLabel* label_;
    bool isQuiet_ = false;
};

}  // namespace bolthole
