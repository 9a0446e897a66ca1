#include "widgets/papers/sheets/test_day_sheet.h"

#include <algorithm>
#include <array>

#include "geometry/car/pass_fields.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/sheets/paper_kit.h"
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
constexpr double kFactLine = 4.1;

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

}  // namespace

struct TestDaySheet::Parts {
    Parts(const Car& car, NumberStyle style, const QPageLayout& layout)
        : facts(setupFactsOf(car, style, false)),
          units(style.units),
          frame(fonts, paintable(layout), testDayCaution()) {
        const double rows = frame.body().height() - kDayLine - setupHeight() - kHeadRow - 1;
        boxHeight = std::clamp(rows / kTestDayPasses, kWritingBox + kBoxGap, kMostRow) - kBoxGap;
    }
    Parts(const Parts&) = delete;

    void paintDayLine(QPainter& painter, double top) const;
    void paintSetup(QPainter& painter, const QRectF& area) const;
    void paintLinks(QPainter& painter, const QRectF& column) const;
    void paintFacts(QPainter& painter, const QRectF& column, const QString& head,
                    const std::vector<SetupFact>& of) const;
    void paintHead(QPainter& painter, double bottom) const;
    void paintRow(QPainter& painter, double top, int number) const;
    [[nodiscard]] std::vector<QRectF> boxes(double top) const;
    [[nodiscard]] double setupHeight() const;
    [[nodiscard]] PrintType headType() const;

    SetupFacts facts;
    Units units;
    PrintFonts fonts;
    PaperFrame frame;
    double boxHeight = kWritingBox;
};

// What the longest column of the setup needs.
double TestDaySheet::Parts::setupHeight() const {
    const std::size_t lines =
        std::max({facts.links.size(), facts.clicks.size(), facts.launch.size() + 4, facts.weights.size()});
    return kFactLine * static_cast<double>(lines + 1) + 2;
}

// The largest in which every column's name fits over its boxes.
PrintType TestDaySheet::Parts::headType() const {
    const std::vector<PassColumn> columns = columnsFor(units);
    const std::vector<QRectF> places = boxes(0);
    PrintType type = kStrong;
    for (std::size_t at = 0; at < columns.size(); ++at) {
        while (type.digits > 1.8 && fonts.width(columns[at].name, type) > places[at].width()) {
            type.digits -= 0.1;
        }
    }
    return type;
}

void TestDaySheet::Parts::paintDayLine(QPainter& painter, double top) const {
    const QString degrees = fromView(markOf(PassUnit::celsius, units));
    const double base = top + 5;
    double x = drawBlank(painter, {0, base}, tr("date"), 24, fonts) + 4;
    x = drawBlank(painter, {x, base}, tr("place"), 36, fonts) + 4;
    x = drawBlank(painter, {x, base}, tr("surface"), 26, fonts) + 4;
    x = drawBlank(painter, {x, base}, tr("its %1").arg(degrees), 12, fonts) + 4;
    x = drawBlank(painter, {x, base}, tr("air %1").arg(degrees), 12, fonts) + 4;
    x = drawBlank(painter, {x, base}, tr("hPa"), 15, fonts) + 4;
    drawBlank(painter, {x, base}, tr("humidity %"), 12, fonts);
}

void TestDaySheet::Parts::paintLinks(QPainter& painter, const QRectF& column) const {
    const std::array<double, 4> lefts{column.left(), column.left() + 0.33 * column.width(),
                                      column.left() + 0.56 * column.width(), column.right()};
    const std::array heads{tr("Link"), tr("chassis hole"), tr("axle hole"), tr("length")};
    double y = column.top() + 3.4;
    const auto row = [&](const std::array<QString, 4>& cells, PrintType name, PrintType other) {
        painter.setPen(Qt::black);
        for (std::size_t cell = 0; cell < cells.size(); ++cell) {
            const bool isLast = cell == 3;
            const double room = isLast ? 0.2 * column.width() : lefts[cell + 1] - lefts[cell] - 2;
            const PrintType type = cell == 0 ? name : other;
            fonts.draw(painter, {lefts[cell], y},
                       isLast ? cells[cell] : fonts.elided(cells[cell], type, room), type,
                       isLast ? Qt::AlignRight : Qt::AlignLeft);
        }
        y += kFactLine;
    };
    row(heads, kStrong, kSmall);
    const auto most = static_cast<std::size_t>((column.bottom() - y) / kFactLine) + 1;
    for (std::size_t at = 0; at < std::min(most, facts.links.size()); ++at) {
        const SetupLink& link = facts.links[at];
        row({link.name, link.chassis, link.axle, link.length.isEmpty() ? QString(kDash) : link.length}, kText,
            kStrong);
    }
}

void TestDaySheet::Parts::paintFacts(QPainter& painter, const QRectF& column, const QString& head,
                                     const std::vector<SetupFact>& of) const {
    double y = column.top() + 3.4;
    painter.setPen(Qt::black);
    fonts.draw(painter, {column.left(), y}, head, kStrong);
    const auto most = static_cast<std::size_t>((column.bottom() - y) / kFactLine);
    for (std::size_t at = 0; at < std::min(most, of.size()); ++at) {
        y += kFactLine;
        const double room = column.width() - fonts.width(of[at].value, kStrong) - 2;
        fonts.draw(painter, {column.left(), y}, fonts.elided(of[at].name, kText, room), kText);
        fonts.draw(painter, {column.right(), y}, of[at].value, kStrong, Qt::AlignRight);
    }
}

void TestDaySheet::Parts::paintSetup(QPainter& painter, const QRectF& area) const {
    constexpr double kGap = 7;
    const double width = area.width() - 3 * kGap;
    const auto column = [&](double from, double share, int gaps) {
        return QRectF(area.left() + from * width + gaps * kGap, area.top(), share * width, area.height());
    };
    paintLinks(painter, column(0, 0.4, 0));
    paintFacts(painter, column(0.4, 0.2, 1), tr("Clicks"), facts.clicks);
    std::vector<SetupFact> pressures = facts.pressures;
    if (pressures.empty()) {
        const QString blank(6, QLatin1Char('_'));
        pressures = {{tr("left front"), blank},
                     {tr("right front"), blank},
                     {tr("left rear"), blank},
                     {tr("right rear"), blank}};
    }
    pressures.insert(pressures.end(), facts.launch.begin(), facts.launch.end());
    paintFacts(painter, column(0.6, 0.2, 2), tr("Pressures, launch"), pressures);
    paintFacts(painter, column(0.8, 0.2, 3), tr("Weights"), facts.weights);
}

std::vector<QRectF> TestDaySheet::Parts::boxes(double top) const {
    const std::vector<PassColumn> columns = columnsFor(units);
    constexpr double kNumber = 8;
    const double room = frame.body().width() - kNumber - kSeenWidth - kChangedWidth - 3;
    double shares = 0;
    for (const PassColumn& column : columns) {
        shares += column.share;
    }
    const double each = (room - kBoxGap * static_cast<double>(columns.size())) / shares;
    std::vector<QRectF> found;
    double x = kNumber;
    for (const PassColumn& column : columns) {
        found.emplace_back(x, top, column.share * each, boxHeight);
        x += column.share * each + kBoxGap;
    }
    return found;
}

void TestDaySheet::Parts::paintHead(QPainter& painter, double bottom) const {
    const std::vector<PassColumn> columns = columnsFor(units);
    const std::vector<QRectF> places = boxes(bottom);
    const PrintType type = headType();
    painter.setPen(Qt::black);
    for (std::size_t at = 0; at < columns.size(); ++at) {
        const double middle = places[at].center().x();
        fonts.draw(painter, {middle, bottom - 4.9}, columns[at].name, type, Qt::AlignHCenter);
        fonts.draw(painter, {middle, bottom - 1.3}, columns[at].unit, kSmall, Qt::AlignHCenter);
    }
    const double seen = frame.body().width() - kSeenWidth;
    fonts.draw(painter, {seen, bottom - 4.9}, tr("seen"), type);
    fonts.draw(painter, {seen - kChangedWidth / 2 - 1.5, bottom - 4.9}, tr("changed before it"), type,
               Qt::AlignHCenter);
}

void TestDaySheet::Parts::paintRow(QPainter& painter, double top, int number) const {
    painter.setPen(Qt::black);
    fonts.draw(painter, {3, top + boxHeight / 2 + 1.5}, QString::number(number), {3.0, true},
               Qt::AlignHCenter);
    for (const QRectF& box : boxes(top)) {
        drawWritingBox(painter, box);
    }
    const double left = frame.body().width() - kSeenWidth;
    drawWritingBox(painter, {left - kChangedWidth - 1.5, top, kChangedWidth, boxHeight});
    const double line = boxHeight / 4;
    for (std::size_t at = 0; at < kSeenCount; ++at) {
        const double x = left + (at % 2 == 0 ? 0.0 : 0.5 * kSeenWidth);
        const std::size_t row = at / 2;
        const double y = top + (static_cast<double>(row) + 0.5) * line + 0.5 * kSmall.digits;
        drawTick(painter, {x, y}, QString::fromStdString(nameOf(static_cast<Seen>(at))), fonts, kSmall);
    }
}

TestDaySheet::TestDaySheet(const Car& car, NumberStyle style, const QPageLayout& page)
    : parts_(std::make_unique<Parts>(car, style, page)) {}

TestDaySheet::~TestDaySheet() = default;
TestDaySheet::TestDaySheet(TestDaySheet&&) noexcept = default;

void TestDaySheet::paintSheet(QPainter& painter, int /*index*/) const {
    const QRectF& body = parts_->frame.body();
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    const QString title =
        parts_->facts.car.isEmpty() ? tr("Test day") : tr("%1: test day").arg(parts_->facts.car);
    parts_->frame.paint(painter, title,
                        parts_->facts.setup.isEmpty() ? QString() : tr("setup: %1").arg(parts_->facts.setup));
    const double pitch = parts_->boxHeight + kBoxGap;
    const double rows = body.bottom() - kTestDayPasses * pitch - 1;
    parts_->paintDayLine(painter, body.top());
    parts_->paintSetup(painter,
                       {0, body.top() + kDayLine, body.width(), rows - kHeadRow - body.top() - kDayLine});
    parts_->paintHead(painter, rows);
    for (int pass = 0; pass < kTestDayPasses; ++pass) {
        parts_->paintRow(painter, rows + pass * pitch, pass + 1);
    }
    painter.restore();
}

}  // namespace bolthole
