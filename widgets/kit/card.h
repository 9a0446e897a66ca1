// A rounded card: what the panels of the bench stand on.
#pragma once

#include <QFrame>

namespace bolthole {

/// Paints the theme's card ground with a hairline border. Children are laid out by whoever fills it; leave
/// kInset free so that the corners show.
class Card : public QFrame {
    Q_OBJECT
  public:
    static constexpr int kInset = 3;
    explicit Card(QWidget* parent = nullptr);

  protected:
    void paintEvent(QPaintEvent* event) override;
};

}  // namespace bolthole
