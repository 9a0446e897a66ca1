// How the blocks of a paper flow down its pages.
#pragma once

#include <QPainter>
#include <QRectF>
#include <functional>
#include <memory>
#include <vector>

namespace bolthole {

/// A piece of a sheet that is never broken. Lengths in mm.
struct SheetBlock {
    double above = 0;        ///< white above it, not at the top of a page
    double height = 0;       ///< the least it needs
    double stretch = 0;      ///< how much higher it may be made to fill a page
    bool takesRest = false;  ///< takes what the others leave of a page
    bool keepNext = false;   ///< stands on one page with the block after it, where a page holds both
    bool freshPage = false;  ///< begins a page where that costs no page more and leaves none mostly white
    std::function<void(QPainter&, const QRectF&)> paint{};  ///< into a box as wide as the page
    std::shared_ptr<const SheetBlock> head{};  ///< repeated above it where it begins a page; null: nothing
};

/// A block and where it stands on its page, from the page's upper left corner.
struct PlacedBlock {
    const SheetBlock* block = nullptr;
    QRectF box;
};
using FlowPage = std::vector<PlacedBlock>;

/// Lets blocks flow into pages of `size`, top to bottom, in order. A block higher than a page is given one of
/// its own and overruns it: what makes blocks keeps them lower. The blocks must outlive the pages.
[[nodiscard]] std::vector<FlowPage> flowed(const std::vector<SheetBlock>& blocks, QSizeF size);

/// The blocks on one page as high as they need.
[[nodiscard]] FlowPage stacked(const std::vector<SheetBlock>& blocks, double width);

/// Paints the blocks of a page with its upper left corner there.
void paintPage(QPainter& painter, const FlowPage& page, QPointF corner);

}  // namespace bolthole
