// What a person may want first: one quiet line under the title on the first start.
#pragma once

#include <QFrame>

class QAction;
class QHBoxLayout;
class QLabel;
class QToolButton;

namespace bolthole {

/// A sentence and a few ways on, each an action of the window, until one is taken or the strip is dismissed;
/// Escape does that while it has the focus. The first way is the window's first stop of the keyboard; a focus
/// that is elsewhere already is not taken away.
class StartStrip : public QFrame {
    Q_OBJECT
  public:
    explicit StartStrip(QWidget* parent = nullptr);

    /// A way on by `action`, after those before it. It must outlive the strip; one with a menu opens it.
    void addWay(const QString& words, QAction* action);
    /// Shows it with the sentence.
    void say(const QString& sentence);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    QLabel* sentence_;
    QHBoxLayout* row_;
    QToolButton* dismiss_;
    QToolButton* first_ = nullptr;  // of the ways
    QToolButton* last_ = nullptr;
};

}  // namespace bolthole
