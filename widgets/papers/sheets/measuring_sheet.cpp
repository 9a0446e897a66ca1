#include "widgets/papers/sheets/measuring_sheet.h"

#include <algorithm>
#include <deque>

#include "widgets/kit/translation.h"
#include "widgets/papers/sheets/measuring_blocks.h"
#include "widgets/papers/sheets/measuring_picture.h"

namespace bolthole {

namespace {

constexpr double kFillLine = 9;  // mm, for date and name
constexpr double kLeastPicture = 58;
constexpr double kMostPicture = 96;
constexpr double kUnderPicture = 1.5;
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

}  // namespace

struct MeasuringSheet::Parts {
    Parts(const Car& of, NumberStyle style, const QPageLayout& layout)
        : car(of), plan(measuringPlan(of)), frame(fonts, paintable(layout), standingCaution()) {
        car.units = style.units;
        const QRectF& body = frame.body();
        const QSizeF room(body.width(),
                          body.height() - kFillLine - kLeastPicture - kUnderPicture - kOverFoot);
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
    Parts(const Parts&) = delete;

    void paintFillLine(QPainter& painter) const;
    void paintNotes(QPainter& painter, double top) const;

    Car car;
    std::vector<PlanArea> plan;
    PrintFonts fonts;
    PaperFrame frame;
    std::deque<MeasuredBlocks> blocks;  // of each area; the pages point into them
    std::vector<MeasuringPage> pages;
};

void MeasuringSheet::Parts::paintFillLine(QPainter& painter) const {
    const double base = frame.body().top() + 4.6;
    double x = drawBlank(painter, {0, base}, tr("date"), 30, fonts) + 5;
    x = drawBlank(painter, {x, base}, tr("by"), 30, fonts) + 6;
    x = drawTick(painter, {x, base}, tr("floor checked level"), fonts) + 5;
    drawTick(painter, {x, base}, tr("as raced, driver aboard"), fonts);
}

// Lines to write on, where the page has room left.
void MeasuringSheet::Parts::paintNotes(QPainter& painter, double top) const {
    constexpr double kLine = 8.5;
    const QRectF& body = frame.body();
    if (body.bottom() - top < kNotes) {
        return;
    }
    painter.setPen(Qt::black);
    fonts.draw(painter, {0, top + kLine - 1.2}, tr("notes"), kit_type::kText);
    painter.setPen(QPen(QColor(125, 125, 125), kThinnestLine, Qt::SolidLine, Qt::FlatCap));
    for (double y = top + kLine; y < body.bottom() - 3; y += kLine) {
        painter.drawLine(QPointF(0, y), QPointF(body.width(), y));
    }
}

MeasuringSheet::MeasuringSheet(const Car& car, NumberStyle style, const QPageLayout& page)
    : parts_(std::make_unique<Parts>(car, style, page)) {}

MeasuringSheet::~MeasuringSheet() = default;
MeasuringSheet::MeasuringSheet(MeasuringSheet&&) noexcept = default;

int MeasuringSheet::sheetCount() const {
    return static_cast<int>(parts_->pages.size());
}

void MeasuringSheet::paintSheet(QPainter& painter, int index) const {
    const MeasuringPage& page = parts_->pages[static_cast<std::size_t>(index)];
    const PlanArea& area = parts_->plan[page.area];
    const QRectF& body = parts_->frame.body();
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    const QString name = QString::fromStdString(parts_->car.title).simplified();
    parts_->frame.paint(painter, name.isEmpty() ? area.title : tr("%1: %2").arg(name, area.title),
                        tr("sheet %1 of %2").arg(index + 1).arg(sheetCount()));
    parts_->paintFillLine(painter);
    const double used = page.blocks.empty() ? 0 : page.blocks.back().box.bottom();
    const double top = body.top() + kFillLine;
    const double height =
        std::clamp(body.bottom() - top - used - kUnderPicture - kOverFoot, kLeastPicture, kMostPicture);
    drawMeasuringPicture(painter, {0, top, body.width(), height}, parts_->fonts, parts_->car, area,
                         page.numbers);
    for (const PlacedBlock& placed : page.blocks) {
        placed.block->paint(painter, placed.box.translated(0, top + height + kUnderPicture));
    }
    parts_->paintNotes(painter, top + height + kUnderPicture + used);
    painter.restore();
}

}  // namespace bolthole
