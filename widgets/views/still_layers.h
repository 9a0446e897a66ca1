// What of a picture keeps its place in a drag, kept as pixels.
#pragma once

#include <QPixmap>
#include <QPointF>
#include <QRectF>
#include <array>
#include <functional>

namespace bolthole {

/// All that a kept picture depends on, in the order it is told.
class StillKey {
  public:
    /// A place in the picture, px: to 64ths, as what moves less, by a solver's last digit, is not seen.
    void tell(QPointF place);
    /// Anything else; must be equal to the last digit.
    void tell(double number);
    void tell(const QRectF& box);

    bool operator==(const StillKey&) const = default;

  private:
    static constexpr std::size_t kMost = 40;
    std::array<double, kMost> told_{};
    std::size_t count_ = 0;
};

/// A picture painted once and shown as long as what it shows stays.
class StillLayer {
  public:
    using Paint = std::function<void(QPainter& painter)>;

    /// Shows it in `picture`, painted anew where the key is another than last time. `paint` draws in the
    /// painter's coordinates.
    void show(QPainter& painter, const QRectF& picture, const StillKey& key, const Paint& paint);
    /// The same only from the second time on that the same is asked, since a picture that is shown once costs
    /// more to keep than to draw. False: nothing was shown.
    [[nodiscard]] bool showIfStill(QPainter& painter, const QRectF& picture, const StillKey& key,
                                   const Paint& paint);

  private:
    StillKey key_;
    StillKey asked_;
    QPixmap pixels_;
};

/// The two layers behind the links of one view: what stands still always, and with it the axle, which stands
/// still where links are dragged at the travel they keep.
struct StillLayers {
    StillLayer backdrop;
    StillLayer withAxle;
};

}  // namespace bolthole
