// A paper whose body is blocks that flow down as many sheets as they need.
#pragma once

#include "widgets/papers/kit/paper_flow.h"
#include "widgets/papers/kit/paper_frame.h"
#include "widgets/papers/kit/printed_sheets.h"

namespace bolthole {

/// Frame and flow of such a paper; what is made of it says its titles and its blocks.
class FlowedPaper : public LaidOutPaper {
  public:
    [[nodiscard]] int count() const final { return static_cast<int>(pages_.size()); }
    void paint(QPainter& painter, int index) const final;

  protected:
    FlowedPaper(const QPageLayout& page, const FrameStyle& style, const QString& starting,
                const QString& caution);

    /// Lets the blocks flow; called once.
    void flow(std::vector<SheetBlock> blocks);
    /// What is said atop sheet `index`.
    [[nodiscard]] virtual SheetTitle title(int index) const = 0;

    [[nodiscard]] const PrintFonts& fonts() const { return fonts_; }
    [[nodiscard]] double width() const { return frame_.body().width(); }

  private:
    PrintFonts fonts_;
    PaperFrame frame_;
    QRectF body_;
    std::vector<SheetBlock> blocks_;
    std::vector<FlowPage> pages_;
};

}  // namespace bolthole
