// A frameless area that scrolls what stands in it.
#pragma once

#include <QScrollArea>

namespace bolthole {

/// Shows its widget at its own width, without frame or background and out of the order of Tab. While it is
/// hidden a change of style costs it nothing: it measures what stands in it when it is shown.
class QuietScroller : public QScrollArea {
    Q_OBJECT
  public:
    explicit QuietScroller(QWidget* parent = nullptr);

  protected:
    bool event(QEvent* event) override;
};

}  // namespace bolthole
