#include "widgets/papers/kit/paper_flow.h"

#include <algorithm>
#include <utility>

namespace bolthole {

namespace {

class Flow {
  public:
    Flow(const std::vector<SheetBlock>& blocks, QSizeF size, bool freshPages)
        : blocks_(blocks), size_(size), freshPages_(freshPages) {}

    std::vector<FlowPage> pages() {
        for (std::size_t at = 0; at < blocks_.size(); ++at) {
            const bool begins = isFollower(at) ? false : !fits(at, groupEnd(at));
            const bool wantsFresh = freshPages_ && blocks_[at].freshPage;
            if (pages_.empty() || (!pages_.back().empty() && (begins || wantsFresh || !fits(at, at + 1)))) {
                pages_.emplace_back();
                y_ = 0;
            }
            place(blocks_[at]);
        }
        for (FlowPage& page : pages_) {
            fill(page);
        }
        return std::move(pages_);
    }

  private:
    [[nodiscard]] bool isFollower(std::size_t at) const { return at > 0 && blocks_[at - 1].keepNext; }

    // One past the last block that stands with the one at `at`.
    [[nodiscard]] std::size_t groupEnd(std::size_t at) const {
        while (at < blocks_.size() && blocks_[at].keepNext) {
            ++at;
        }
        return std::min(at + 1, blocks_.size());
    }

    // Whether the blocks fit below what stands on the page.
    [[nodiscard]] bool fits(std::size_t from, std::size_t to) const {
        double y = y_;
        for (std::size_t at = from; at < to; ++at) {
            y += (y > 0 ? blocks_[at].above : 0) + blocks_[at].height;
        }
        constexpr double kRounding = 1e-6;
        return y <= size_.height() + kRounding;
    }

    void place(const SheetBlock& block) {
        if (y_ == 0 && block.head) {
            put(*block.head);
        }
        put(block);
    }

    void put(const SheetBlock& block) {
        y_ += y_ > 0 ? block.above : 0;
        pages_.back().push_back({&block, QRectF(0, y_, size_.width(), block.height)});
        y_ += block.height;
    }

    // Shares what is left of a page among the blocks that can use it.
    void fill(FlowPage& page) const {
        double stretch = 0;
        for (const PlacedBlock& placed : page) {
            stretch += placed.block->stretch;
        }
        const double left = size_.height() - page.back().box.bottom();
        const double share = stretch > 0 ? std::clamp(left / stretch, 0.0, 1.0) : 0;
        double rest = std::max(0.0, left - share * stretch);
        double down = 0;
        for (PlacedBlock& placed : page) {
            double more = share * placed.block->stretch;
            if (placed.block->takesRest) {
                more += std::exchange(rest, 0.0);
            }
            placed.box.translate(0, down);
            placed.box.setHeight(placed.box.height() + more);
            down += more;
        }
    }

    const std::vector<SheetBlock>& blocks_;
    QSizeF size_;
    bool freshPages_;
    std::vector<FlowPage> pages_;
    double y_ = 0;
};

// Whether a page before the last is left mostly white.
bool hasGap(const std::vector<FlowPage>& pages, double height) {
    constexpr double kMostWhite = 0.35;
    return std::any_of(pages.begin(), pages.end() - 1, [&](const FlowPage& page) {
        return page.back().box.bottom() < (1 - kMostWhite) * height;
    });
}

}  // namespace

std::vector<FlowPage> flowed(const std::vector<SheetBlock>& blocks, QSizeF size) {
    if (blocks.empty()) {
        return {};
    }
    std::vector<FlowPage> tight = Flow(blocks, size, false).pages();
    std::vector<FlowPage> fresh = Flow(blocks, size, true).pages();
    return fresh.size() <= tight.size() && !hasGap(fresh, size.height()) ? fresh : tight;
}

FlowPage stacked(const std::vector<SheetBlock>& blocks, double width) {
    FlowPage page;
    double y = 0;
    for (const SheetBlock& block : blocks) {
        y += page.empty() ? 0 : block.above;
        page.push_back({&block, QRectF(0, y, width, block.height)});
        y += block.height;
    }
    return page;
}

void paintPage(QPainter& painter, const FlowPage& page, QPointF corner) {
    for (const PlacedBlock& placed : page) {
        placed.block->paint(painter, placed.box.translated(corner));
    }
}

}  // namespace bolthole
