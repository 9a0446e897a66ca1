#include "widgets/papers/sheets/measuring_sheet.h"

#include <algorithm>
#include <deque>

#include "widgets/kit/translation.h"
#include "widgets/papers/kit/paper_frame.h"
#include "widgets/papers/kit/paper_marks.h"
#include "widgets/papers/sheets/measuring_blocks.h"
#include "widgets/papers/sheets/measuring_picture.h"

namespace bolthole {

namespace {

constexpr double kFillLine = 9;  // mm, for date and name
constexpr double kLeastPicture = 48;
constexpr double kMostPicture = 96;
constexpr double kUnderPicture = 1.5;
constexpr double kUnderTitle = 2;
constexpr double kOverFoot = 1.2;
constexpr double kNotes = 24;  // least room that is ruled for notes

QString standingCaution() {
    return tr(
        "On its wheels: a drive-on lift or four solid wheel platforms on hard level ground, chocked both "
        "ways, "
        "pushed hard first; a helper in earshot. Never under a car on a jack. On stands under axle and front "
        "suspension: check the ride height. Local rules and the word of a licensed mechanic come first.");
}

/// One page: which area, what it is headed with, and what flows onto it.
struct MeasuringPage {
    std::size_t area = 0;
    QString title;
    FlowPage blocks;
    std::vector<int> numbers;  // of the points whose rows stand on it
};

class LaidMeasuring : public LaidOutPaper {
  public:
    LaidMeasuring(const Car& of, NumberStyle style, const QPageLayout& layout)
        : car_(of), plan_(measuringPlan(of)), frame_(fonts_, paintable(layout), {}, {}, standingCaution()) {
        car_.units = style.units;
        body_ = frame_.body().adjusted(0, kUnderTitle, 0, -kOverFoot);
        const MeasuringBlocks make(fonts_, body_.width(), style.units);
        for (std::size_t area = 0; area < plan_.size(); ++area) {
            addPages(area, plan_[area].title, make.of(plan_[area]));
            if (plan_[area].spareHoles) {
                addPages(area, tr("more holes: %1").arg(plan_[area].title), make.ofMoreHoles(plan_[area]));
            }
        }
    }

    [[nodiscard]] int count() const override { return static_cast<int>(pages_.size()); }
    void paint(QPainter& painter, int index) const override;

  private:
    void addPages(std::size_t area, const QString& title, MeasuredBlocks blocks);
    void paintFillLine(QPainter& painter) const;
    void paintNotes(QPainter& painter, double top) const;

    Car car_;
    std::vector<PlanArea> plan_;
    PrintFonts fonts_;
    PaperFrame frame_;
    QRectF body_;
    std::deque<MeasuredBlocks> blocks_;  // the pages point into them
    std::vector<MeasuringPage> pages_;
};

void LaidMeasuring::addPages(std::size_t area, const QString& title, MeasuredBlocks blocks) {
    const QSizeF room(body_.width(), body_.height() - kFillLine - kLeastPicture - kUnderPicture);
    blocks_.push_back(std::move(blocks));
    for (FlowPage& page : flowed(blocks_.back().blocks, room)) {
        std::vector<int> numbers;
        for (const PlacedBlock& placed : page) {
            if (const int number = blocks_.back().numberOf(placed.block); number > 0) {
                numbers.push_back(number);
            }
        }
        pages_.push_back({area, title, std::move(page), std::move(numbers)});
    }
}

void LaidMeasuring::paintFillLine(QPainter& painter) const {
    const double base = body_.top() + 4.6;
    double x = drawBlank(painter, {0, base}, tr("date"), 30, fonts_) + 5;
    x = drawBlank(painter, {x, base}, tr("by"), 30, fonts_) + 6;
    x = drawTick(painter, {x, base}, tr("floor checked level"), fonts_) + 5;
    drawTick(painter, {x, base}, tr("as raced, driver aboard"), fonts_);
}

// Lines to write on, where the page has room left.
void LaidMeasuring::paintNotes(QPainter& painter, double top) const {
    constexpr double kLine = 8.5;
    if (body_.bottom() - top < kNotes) {
        return;
    }
    painter.setPen(Qt::black);
    fonts_.draw(painter, {0, top + kLine - 1.2}, tr("notes"), kit_type::kText);
    for (double y = top + kLine; y < body_.bottom() - 1.8; y += kLine) {
        drawRule(painter, kitHairline(), y, 0, body_.width());
    }
}

void LaidMeasuring::paint(QPainter& painter, int index) const {
    const MeasuringPage& page = pages_[static_cast<std::size_t>(index)];
    const PlanArea& area = plan_[page.area];
    SheetTitle title = titleOf(car_.title, page.title);
    title.asides = {{sheetWords(index, count())}};
    frame_.paint(painter, title);
    paintFillLine(painter);
    const double used = page.blocks.empty() ? 0 : page.blocks.back().box.bottom();
    const double top = body_.top() + kFillLine;
    const double height =
        std::clamp(body_.bottom() - top - used - kUnderPicture, kLeastPicture, kMostPicture);
    drawMeasuringPicture(painter, {0, top, body_.width(), height}, fonts_, car_, area, page.numbers);
    paintPage(painter, page.blocks, {0, top + height + kUnderPicture});
    paintNotes(painter, top + height + kUnderPicture + used);
}

}  // namespace

MeasuringSheet::MeasuringSheet(const Car& car, NumberStyle style, const QPageLayout& page)
    : PrintedSheets(std::make_unique<const LaidMeasuring>(car, style, page)) {}

}  // namespace bolthole
