// One line across the top of the window for what went wrong, until it is dismissed.
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

    void say(const QString& text);
    [[nodiscard]] QString text() const;

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    QLabel* label_;
};

}  // namespace bolthole
