#include "widgets/papers/sheets/test_day_sheet.h"

#include <algorithm>

#include "geometry/car/pass_fields.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/kit/paper_frame.h"
#include "widgets/papers/kit/paper_marks.h"
#include "widgets/papers/kit/paper_text.h"
#include "widgets/papers/sheets/setup_facts.h"

namespace bolthole {

namespace {

using kit_type::kSmall;
using kit_type::kStrong;
using kit_type::kText;

constexpr double kDayLine = 9;  // mm, of date, place and air
constexpr double kHeadRow = 9;  // over the boxes
constexpr double kSeenWidth = 60;
constexpr double kChangedWidth = 33;
constexpr double kMostRow = 16;  // mm, of a pass
constexpr double kUnderDayTitle = 2;
constexpr double kUnderSetup = 2;

QString testDayCaution() {
    return tr(
        "Closed course only, building up speed; nobody beside or behind the car. After any change torque "
        "bolts and "
        "jam nuts, check bind, driveline and brake lines through the whole travel. Local rules and the "
        "sanctioning "
        "body come first.");
}

/// A column of boxes.
struct PassColumn {
    QString name;
    QString unit;
    double share = 1;  ///< of the width beside the fixed columns
};

std::vector<PassColumn> columnsFor(Units units) {
    const auto mark = [units](PassUnit unit) { return fromView(markOf(unit, units)); };
    const QString pressure = mark(PassUnit::kilopascal);
    const QString speed = mark(PassUnit::kilometresPerHour);
    return {{tr("time"), {}, 1},
            {tr("left rear"), pressure, 0.9},
            {tr("right rear"), pressure, 0.9},
            {tr("launch"), tr("rpm"), 1},
            {tr("60 ft"), tr("s"), 1.2},
            {tr("330 ft"), tr("s"), 1.05},
            {tr("1/8 mile"), tr("s"), 1.05},
            {tr("there"), speed, 1},
            {tr("1/4 mile"), tr("s"), 1.05},
            {tr("there"), speed, 1}};
}

/// A part of the setup, above the passes.
struct SetupPart {
    double left = 0;
    LaidTable table;
};

TextTable linksTable(const std::vector<SetupLink>& links) {
    TextTable table;
    table.columns = {{}, {.isBold = true}, {.isBold = true}, {.align = Qt::AlignRight, .isBold = true}};
    table.head = {{{tr("Link"), true}, tr("chassis hole"), tr("axle hole"), tr("length")}};
    for (const SetupLink& link : links) {
        table.rows.push_back(
            {link.name, link.chassis, link.axle, link.length.isEmpty() ? QString(kDash) : link.length});
    }
    return table;
}

TextTable factsTable(const QString& head, const std::vector<SetupFact>& facts) {
    TextTable table;
    table.columns = {{}, {.align = Qt::AlignRight, .isBold = true}};
    table.head = {{{head, true, 2}}};
    for (const SetupFact& fact : facts) {
        table.rows.push_back({fact.name, fact.value});
    }
    return table;
}

class LaidTestDay : public LaidOutPaper {
  public:
    LaidTestDay(const Car& car, NumberStyle style, const QPageLayout& layout)
        : facts_(setupFactsOf(car, style, false)),
          units_(style.units),
          frame_(fonts_, paintable(layout), {}, {}, testDayCaution()),
          body_(frame_.body().adjusted(0, kUnderDayTitle, 0, -1)) {
        addSetup();
        double setupHeight = 0;
        for (const SetupPart& part : setup_) {
            setupHeight = std::max(setupHeight, part.table.height() + kUnderSetup);
        }
        const double rows = body_.height() - kDayLine - setupHeight - kHeadRow;
        boxHeight_ = std::clamp(rows / kTestDayPasses, kWritingBox + kBoxGap, kMostRow) - kBoxGap;
    }

    [[nodiscard]] int count() const override { return 1; }
    void paint(QPainter& painter, int index) const override;

  private:
    void addSetup();
    void paintDayLine(QPainter& painter, double top) const;
    void paintHead(QPainter& painter, double bottom) const;
    void paintRow(QPainter& painter, double top, int number) const;
    [[nodiscard]] std::vector<QRectF> boxes(double top) const;
    [[nodiscard]] PrintType headType() const;

    SetupFacts facts_;
    Units units_;
    PrintFonts fonts_;
    PaperFrame frame_;
    QRectF body_;
    std::vector<SetupPart> setup_;
    double boxHeight_ = kWritingBox;
};

void LaidTestDay::addSetup() {
    std::vector<SetupFact> pressures = facts_.pressures;
    if (pressures.empty()) {
        const QString blank(6, QLatin1Char('_'));
        pressures = {{tr("left front"), blank},
                     {tr("right front"), blank},
                     {tr("left rear"), blank},
                     {tr("right rear"), blank}};
    }
    pressures.insert(pressures.end(), facts_.launch.begin(), facts_.launch.end());
    constexpr double kGap = 7;
    const double room = body_.width() - 3 * kGap;
    double left = 0;
    const auto add = [&](TextTable table, double share) {
        table.pad = 0;
        table.gap = 2;
        table.moreGap = room;  // the last column stands at the right edge
        table.hasRules = false;
        setup_.push_back({left, LaidTable(table, share * room, fonts_)});
        left += share * room + kGap;
    };
    add(linksTable(facts_.links), 0.4);
    add(factsTable(tr("Clicks"), facts_.clicks), 0.2);
    add(factsTable(tr("Pressures, launch"), pressures), 0.2);
    add(factsTable(tr("Weights"), facts_.weights), 0.2);
}

// The largest in which every column's name fits over its boxes.
PrintType LaidTestDay::headType() const {
    const std::vector<PassColumn> columns = columnsFor(units_);
    const std::vector<QRectF> places = boxes(0);
    PrintType type = kStrong;
    for (std::size_t at = 0; at < columns.size(); ++at) {
        type = fonts_.fitted(columns[at].name, type, places[at].width(), 1.8);
    }
    return type;
}

void LaidTestDay::paintDayLine(QPainter& painter, double top) const {
    const QString degrees = fromView(markOf(PassUnit::celsius, units_));
    const double base = top + 5;
    double x = drawBlank(painter, {0, base}, tr("date"), 24, fonts_) + 4;
    x = drawBlank(painter, {x, base}, tr("place"), 36, fonts_) + 4;
    x = drawBlank(painter, {x, base}, tr("surface"), 26, fonts_) + 4;
    x = drawBlank(painter, {x, base}, tr("its %1").arg(degrees), 12, fonts_) + 4;
    x = drawBlank(painter, {x, base}, tr("air %1").arg(degrees), 12, fonts_) + 4;
    x = drawBlank(painter, {x, base}, tr("hPa"), 15, fonts_) + 4;
    drawBlank(painter, {x, base}, tr("humidity %"), 12, fonts_);
}

std::vector<QRectF> LaidTestDay::boxes(double top) const {
    const std::vector<PassColumn> columns = columnsFor(units_);
    constexpr double kNumber = 8;
    const double room = body_.width() - kNumber - kSeenWidth - kChangedWidth - 3;
    double shares = 0;
    for (const PassColumn& column : columns) {
        shares += column.share;
    }
    const double each = (room - kBoxGap * static_cast<double>(columns.size())) / shares;
    std::vector<QRectF> found;
    double x = kNumber;
    for (const PassColumn& column : columns) {
        found.emplace_back(x, top, column.share * each, boxHeight_);
        x += column.share * each + kBoxGap;
    }
    return found;
}

void LaidTestDay::paintHead(QPainter& painter, double bottom) const {
    const std::vector<PassColumn> columns = columnsFor(units_);
    const std::vector<QRectF> places = boxes(bottom);
    const PrintType type = headType();
    painter.setPen(Qt::black);
    for (std::size_t at = 0; at < columns.size(); ++at) {
        const double middle = places[at].center().x();
        fonts_.draw(painter, {middle, bottom - 4.9}, columns[at].name, type, Qt::AlignHCenter);
        fonts_.draw(painter, {middle, bottom - 1.3}, columns[at].unit, kSmall, Qt::AlignHCenter);
    }
    const double seen = body_.width() - kSeenWidth;
    fonts_.draw(painter, {seen, bottom - 4.9}, tr("seen"), type);
    fonts_.draw(painter, {seen - kChangedWidth / 2 - 1.5, bottom - 4.9}, tr("changed before it"), type,
                Qt::AlignHCenter);
}

void LaidTestDay::paintRow(QPainter& painter, double top, int number) const {
    painter.setPen(Qt::black);
    fonts_.draw(painter, {3, top + boxHeight_ / 2 + 1.5}, QString::number(number), {3.0, true},
                Qt::AlignHCenter);
    for (const QRectF& box : boxes(top)) {
        drawWritingBox(painter, box);
    }
    const double left = body_.width() - kSeenWidth;
    drawWritingBox(painter, {left - kChangedWidth - 1.5, top, kChangedWidth, boxHeight_});
    const double line = boxHeight_ / 4;
    for (std::size_t at = 0; at < kSeenCount; ++at) {
        const double x = left + (at % 2 == 0 ? 0.0 : 0.5 * kSeenWidth);
        const std::size_t row = at / 2;
        const double y = top + (static_cast<double>(row) + 0.5) * line + 0.5 * kSmall.digits;
        drawTick(painter, {x, y}, QString::fromStdString(nameOf(static_cast<Seen>(at))), fonts_, kSmall);
    }
}

void LaidTestDay::paint(QPainter& painter, int /*index*/) const {
    SheetTitle title = titleOf(facts_.car.toStdString(), tr("test day"));
    if (!facts_.setup.isEmpty()) {
        title.asides = {{tr("setup: %1").arg(facts_.setup)}};
    }
    frame_.paint(painter, title);
    const double pitch = boxHeight_ + kBoxGap;
    const double rows = body_.bottom() - kTestDayPasses * pitch;
    const double top = body_.top() + kDayLine;
    paintDayLine(painter, body_.top());
    for (const SetupPart& part : setup_) {
        part.table.paint(painter, {part.left, top}, rows - kHeadRow - top);
    }
    paintHead(painter, rows);
    for (int pass = 0; pass < kTestDayPasses; ++pass) {
        paintRow(painter, rows + pass * pitch, pass + 1);
    }
}

}  // namespace

TestDaySheet::TestDaySheet(const Car& car, NumberStyle style, const QPageLayout& page)
    : PrintedSheets(std::make_unique<const LaidTestDay>(car, style, page)) {}

}  // namespace bolthole
