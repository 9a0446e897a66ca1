#include "widgets/papers/kit/flowed_paper.h"

namespace bolthole {

namespace {

constexpr double kAroundBody = 2.4;  // white under the title's rule and over the foot's

}  // namespace

FlowedPaper::FlowedPaper(const QPageLayout& page, const FrameStyle& style, const QString& starting,
                         const QString& caution)
    : frame_(fonts_, paintable(page), style, starting, caution),
      body_(frame_.body().adjusted(0, kAroundBody, 0, -kAroundBody)) {}

void FlowedPaper::flow(std::vector<SheetBlock> blocks) {
    blocks_ = std::move(blocks);
    pages_ = flowed(blocks_, body_.size());
}

void FlowedPaper::paint(QPainter& painter, int index) const {
    frame_.paint(painter, title(index));
    paintPage(painter, pages_[static_cast<std::size_t>(index)], body_.topLeft());
}

}  // namespace bolthole
