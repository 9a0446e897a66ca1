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
constexpr double kLeastPicture = 58;
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

/// One page: which area, and what flows onto it.
struct MeasuringPage {
    std::size_t area = 0;
    FlowPage blocks;
    std::vector<int> numbers;  // of the points whose rows stand on it
};

class LaidMeasuring : public LaidOutPaper {
  public:
    LaidMeasuring(const Car& of, NumberStyle style, const QPageLayout& layout)
        : car(of), plan(measuringPlan(of)), frame(fonts, paintable(layout), {}, {}, standingCaution()) {
        car.units = style.units;
        body = frame.body().adjusted(0, kUnderTitle, 0, -kOverFoot);
        const QSizeF room(body.width(), body.height() - kFillLine - kLeastPicture - kUnderPicture);
        for (std::size_t area = 0; area < plan.size(); ++area) {
            blocks.push_back(MeasuringBlocks(fonts, body.width(), style.units).of(plan[area]));
            for (FlowPage& page : flowed(blocks.back().blocks, room)) {
                std::vector<int> numbers;
                for (const PlacedBlock& placed : page) {
                    if (const int number = blocks.back().numberOf(placed.block); number > 0) {
                        numbers.push_back(number);
                    }
                }
                pages.push_back({area, std::move(page), std::move(numbers)});
            }
        }
    }

    [[nodiscard]] int count() const override { return static_cast<int>(pages.size()); }
    void paint(QPainter& painter, int index) const override;

  private:
    void paintFillLine(QPainter& painter) const;
    void paintNotes(QPainter& painter, double top) const;

    Car car;
    std::vector<PlanArea> plan;
    PrintFonts fonts;
    PaperFrame frame;
    QRectF body;
    std::deque<MeasuredBlocks> blocks;  // of each area; the pages point into them
    std::vector<MeasuringPage> pages;
};

void LaidMeasuring::paintFillLine(QPainter& painter) const {
    const double base = body.top() + 4.6;
    double x = drawBlank(painter, {0, base}, tr("date"), 30, fonts) + 5;
    x = drawBlank(painter, {x, base}, tr("by"), 30, fonts) + 6;
    x = drawTick(painter, {x, base}, tr("floor checked level"), fonts) + 5;
    drawTick(painter, {x, base}, tr("as raced, driver aboard"), fonts);
}

// Lines to write on, where the page has room left.
void LaidMeasuring::paintNotes(QPainter& painter, double top) const {
    constexpr double kLine = 8.5;
    if (body.bottom() - top < kNotes) {
        return;
    }
    painter.setPen(Qt::black);
    fonts.draw(painter, {0, top + kLine - 1.2}, tr("notes"), kit_type::kText);
    for (double y = top + kLine; y < body.bottom() - 1.8; y += kLine) {
        drawRule(painter, kitHairline(), y, 0, body.width());
    }
}

void LaidMeasuring::paint(QPainter& painter, int index) const {
    const MeasuringPage& page = pages[static_cast<std::size_t>(index)];
    const PlanArea& area = plan[page.area];
    SheetTitle title = titleOf(car.title, area.title);
    title.asides = {{sheetWords(index, count())}};
    frame.paint(painter, title);
    paintFillLine(painter);
    const double used = page.blocks.empty() ? 0 : page.blocks.back().box.bottom();
    const double top = body.top() + kFillLine;
    const double height = std::clamp(body.bottom() - top - used - kUnderPicture, kLeastPicture, kMostPicture);
    drawMeasuringPicture(painter, {0, top, body.width(), height}, fonts, car, area, page.numbers);
    paintPage(painter, page.blocks, {0, top + height + kUnderPicture});
    paintNotes(painter, top + height + kUnderPicture + used);
}

}  // namespace

MeasuringSheet::MeasuringSheet(const Car& car, NumberStyle style, const QPageLayout& page)
    : PrintedSheets(std::make_unique<const LaidMeasuring>(car, style, page)) {}

}  // namespace bolthole
