#include "widgets/papers/change_sheet.h"

#include <QPainter>
#include <algorithm>

#include "geometry/uncertainty/uncertain_inputs.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/change_sheet_blocks.h"
#include "widgets/papers/change_sheet_curves.h"
#include "widgets/papers/change_sheet_side.h"
#include "widgets/papers/change_sheet_words.h"
#include "widgets/papers/printed_sheets.h"
#include "widgets/papers/wall_chart_words.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

using sheet_type::kStrong;
using sheet_type::kText;

constexpr PrintType kTitle{4.6, true};
constexpr PrintType kNames{3.1, false};
constexpr PrintType kStartingType = sheet_type::kStrong;
constexpr double kTitleRule = 15.5;  // mm, down from the top; more where starting numbers are named above it
constexpr double kUnderTitle = 3;
constexpr double kTickEnd = 1.6;

// Of the two cars the one of which less was measured: what differs rests on both.
QString startingOf(const ChangeRequest& request) {
    const bool beforeHasMore = startsUsed(request.before).size() > startsUsed(request.after).size();
    return startingHeading(beforeHasMore ? request.before : request.after);
}

}  // namespace

QPageLayout changePageOf(ChangePaper paper) {
    const QPageSize::PageSizeId size = paper == ChangePaper::letter ? QPageSize::Letter : QPageSize::A4;
    return {QPageSize(size), QPageLayout::Portrait,
            QMarginsF(kPaperMargin, kPaperMargin, kPaperMargin, kPaperMargin), QPageLayout::Millimeter};
}

ChangePaper usualChangePaper(Units units) {
    return units == Units::inch ? ChangePaper::letter : ChangePaper::a4;
}

struct ChangeSheet::Parts {
    Parts(const ChangeRequest& asked, const QPageLayout& layout)
        : request(asked),
          comparison(compareCars(request.before, request.after)),
          words(sheetWordsOf(comparison, request.style)),
          page(layout.paintRect(QPageLayout::Millimeter).size()) {
        barLength = request.style.units == Units::inch ? 50.8 : 50.0;
        caution = fonts.wrapped(cautionWords(), kText, page.width() - barLength - 8);
        foot = page.height() -
               std::max(static_cast<double>(caution.size()) * kText.leading() + kText.digits, 12.0);
        starting = fonts.wrapped(startingOf(request), kStartingType, page.width());
        rule = kTitleRule + (starting.join(QString()).isEmpty()
                                 ? 0.0
                                 : static_cast<double>(starting.size()) * kStartingType.leading());
        body = QRectF(QPointF(0, rule + kUnderTitle), QPointF(page.width(), foot - 3));
        fillBlocks();
        pages = flowed(blocks, body.size());
    }
    Parts(const Parts&) = delete;

    void fillBlocks();
    void addTurns(const BlockMaker& make);
    void addChecks(const BlockMaker& make);
    void addExpected(const BlockMaker& make);
    void addNext(const BlockMaker& make);
    void addRoomToWrite(const BlockMaker& make);
    [[nodiscard]] QString tellingWords() const;
    void add(std::vector<SheetBlock> more) { std::ranges::move(more, std::back_inserter(blocks)); }
    [[nodiscard]] SheetBlock sideView() const;
    [[nodiscard]] SheetBlock curves() const;
    void paintTitle(QPainter& painter, int index) const;
    void paintFoot(QPainter& painter) const;

    ChangeRequest request;
    Comparison comparison;
    SheetWords words;
    PrintFonts fonts;
    QSizeF page;
    double barLength = 50;
    QStringList caution;
    QStringList starting;  // what nobody measured, in the heading
    double rule = 0;       // of the title
    double foot = 0;       // rule above the caution
    QRectF body;
    std::vector<SheetBlock> blocks;
    std::vector<FlowPage> pages;
};

SheetBlock ChangeSheet::Parts::sideView() const {
    SheetBlock block;
    block.above = 4;
    block.height = 70;
    block.stretch = 36;
    block.paint = [this](QPainter& painter, const QRectF& box) {
        drawSheetSide(painter, box, fonts, comparison);
    };
    return block;
}

SheetBlock ChangeSheet::Parts::curves() const {
    SheetBlock block;
    block.above = 1;
    block.height = 52;
    block.stretch = 34;
    block.paint = [this](QPainter& painter, const QRectF& box) {
        drawSheetCurves(painter, box, fonts, comparison, request.style.units);
    };
    return block;
}

void ChangeSheet::Parts::addTurns(const BlockMaker& make) {
    if (!words.problems.isEmpty()) {
        blocks.push_back(make.alert(QStringLiteral("Warning"), words.problems));
    }
    if (!words.differs) {
        blocks.push_back(make.heading(QStringLiteral("Nothing differs")));
        blocks.push_back(make.paragraph(
            QStringLiteral("The two cars are the same: nothing to turn, and every figure stays as it is.")));
        return;
    }
    if (!words.bolts.rows.empty() || !words.lengths.rows.empty()) {
        blocks.push_back(make.paragraph(QString::fromUtf8(kBeforeBolts)));
    }
    for (const SheetTable* table :
         {&words.bolts, &words.lengths, &words.unshared, &words.numbers, &words.holes}) {
        add(make.table(*table));
    }
    if (words.bolts.rows.empty() && words.lengths.rows.empty()) {
        blocks.push_back(
            make.paragraph(QStringLiteral("No bolt goes to another hole, and no link gets another length.")));
    }
}

void ChangeSheet::Parts::addChecks(const BlockMaker& make) {
    if (!words.checks.empty()) {
        blocks.push_back(make.heading(QStringLiteral("Check again, before it moves")));
        add(make.checks(words.checks));
    }
}

QString ChangeSheet::Parts::tellingWords() const {
    const Units units = request.style.units;
    const QString length = units == Units::inch
                               ? QStringLiteral("1/16")
                               : QString::fromStdString(fineFigureText(tellingChange(Quantity::length),
                                                                       Quantity::length, units));
    const QString angle =
        QString::fromStdString(figureText(tellingChange(Quantity::angle), Quantity::angle, units));
    return QStringLiteral("bold: a change of %1 %2, %3°, 1 % or more")
        .arg(length, unitText(Quantity::length, units), angle);
}

void ChangeSheet::Parts::addExpected(const BlockMaker& make) {
    blocks.push_back(
        make.heading(words.differs ? QStringLiteral("What to expect") : QStringLiteral("As it is"),
                     words.differs ? tellingWords() : QString()));
    blocks.back().freshPage = words.differs;
    if (!words.figures.empty()) {
        add(make.figures(words.figures));
    }
    for (const QString& sentence : words.sure) {
        blocks.push_back(make.paragraph(sentence));
    }
    if (!words.quiet.isEmpty()) {
        blocks.push_back(make.paragraph(words.quiet));
    }
    if (words.hasFarAway) {
        blocks.push_back(make.paragraph(
            QStringLiteral("\u221E: links parallel in side view, or the instant center over %1 %2 away.")
                .arg(QString::fromStdString(figureText(kFarAway, Quantity::length, request.style.units)),
                     unitText(Quantity::length, request.style.units))));
    }
    blocks.push_back(make.paragraph(
        words.differs ? QStringLiteral("Through travel, bump upward: before dashed, \u25CB at ride; after "
                                       "solid, \u25CF at ride.")
                      : QStringLiteral("Through travel, bump upward.")));
    blocks.back().above = 2.5;
    blocks.back().keepNext = true;
    blocks.push_back(curves());
}

void ChangeSheet::Parts::addNext(const BlockMaker& make) {
    if (request.next.isEmpty()) {
        return;
    }
    blocks.push_back(make.heading(QStringLiteral("Next thing to try"),
                                  QStringLiteral("computed launches; no real car has been compared yet")));
    for (const QString& sentence : request.next) {
        blocks.push_back(make.paragraph(sentence));
    }
}

void ChangeSheet::Parts::addRoomToWrite(const BlockMaker& make) {
    const QString angle = words.pinionExpected.isEmpty()
                              ? QStringLiteral("pinion, °")
                              : QStringLiteral("pinion, expect ") + words.pinionExpected;
    const QString shaft = words.shaftExpected.isEmpty()
                              ? QStringLiteral("driveshaft, °")
                              : QStringLiteral("shaft, expect ") + words.shaftExpected;
    const QString length = unitText(Quantity::length, request.style.units);
    const QString weight = unitText(Quantity::mass, request.style.units);
    const QStringList corners{QStringLiteral("left front"), QStringLiteral("right front"),
                              QStringLiteral("left rear"), QStringLiteral("right rear")};
    constexpr double kRow = 10.5;
    constexpr double kNotes = 16.5;
    blocks.push_back(make.heading(QStringLiteral("Measured after the change"),
                                  QStringLiteral("by ____________________  on ______________")));
    blocks.push_back(make.writingRow(QStringLiteral("Angles at ride"), {angle, shaft}, kRow));
    blocks.push_back(make.writingRow(QStringLiteral("Ride height, ") + length, corners, kRow));
    blocks.push_back(make.writingRow(QStringLiteral("Corner weight, ") + weight, corners, kRow));
    blocks.push_back(make.writingRow(
        QStringLiteral("60 ft, s"),
        {QStringLiteral("run 1"), QStringLiteral("run 2"), QStringLiteral("run 3"), QStringLiteral("run 4")},
        kRow));
    blocks.push_back(make.notes(QStringLiteral("Notes"), kNotes));
}

void ChangeSheet::Parts::fillBlocks() {
    const BlockMaker make(fonts, page.width());
    addTurns(make);
    addChecks(make);
    blocks.push_back(sideView());
    addExpected(make);
    addNext(make);
    if (words.differs) {
        addRoomToWrite(make);
    }
}

void ChangeSheet::Parts::paintTitle(QPainter& painter, int index) const {
    const double right = page.width();
    const QString sheet = QStringLiteral("sheet %1 of %2").arg(index + 1).arg(pages.size());
    const double aside =
        std::max(fonts.width(sheet, kText), fonts.width(QStringLiteral("2000-00-00"), kText)) + 6;
    const double first = 6.2;
    const double second = 12.8;
    painter.setPen(Qt::black);
    const QString name = QString::fromStdString(request.after.title).simplified();
    const QString kind = name.isEmpty() ? QStringLiteral("Change sheet") : QStringLiteral(": change sheet");
    const double room = right - aside - fonts.width(kind, kTitle);
    fonts.draw(painter, {0, first}, fonts.elided(name, kTitle, room) + kind, kTitle);
    fonts.draw(painter, {right, first}, request.date.toString(Qt::ISODate), kText, Qt::AlignRight);
    fonts.draw(painter, {right, second}, sheet, kText, Qt::AlignRight);
    double x = 0;
    const PrintType bold{kNames.digits, true};
    const auto say = [&](const QString& text, PrintType type) {
        const QString shown = fonts.elided(text, type, (right - aside) / 2 - 14);
        fonts.draw(painter, {x, second}, shown, type);
        x += fonts.width(shown, type) + 2.2;
    };
    say(QStringLiteral("from"), kNames);
    say(request.beforeName.simplified(), bold);
    say(QStringLiteral("to"), kNames);
    say(request.afterName.simplified(), bold);
    painter.setPen(printPen(0.6));
    painter.drawLine(QPointF(0, rule), QPointF(right, rule));
    if (rule > kTitleRule) {
        painter.setPen(Qt::black);
        fonts.draw(painter, {0, second + kStartingType.leading() + 0.6}, starting, kStartingType);
    }
}

void ChangeSheet::Parts::paintFoot(QPainter& painter) const {
    painter.setPen(printPen(0.3));
    painter.drawLine(QPointF(0, foot), QPointF(page.width(), foot));
    painter.setPen(Qt::black);
    fonts.draw(painter, {0, foot + 2.2 * kText.digits}, caution, kText);
    const double right = page.width() - 0.3;
    const double left = right - barLength;
    const double y = page.height() - 2;
    painter.setPen(printPen(0.5));
    painter.drawLine(QPointF(left, y), QPointF(right, y));
    for (const double x : {left, (left + right) / 2, right}) {
        painter.drawLine(QPointF(x, y - kTickEnd), QPointF(x, y + kTickEnd));
    }
    const bool inch = request.style.units == Units::inch;
    painter.setPen(Qt::black);
    fonts.draw(painter, {(left + right) / 2, y - 2 - kText.descent()},
               QStringLiteral("scale bar 1:1, %1").arg(inch ? "2 in" : "50 mm"), kText, Qt::AlignHCenter);
}

ChangeSheet::ChangeSheet(const ChangeRequest& request, const QPageLayout& page)
    : parts_(std::make_unique<Parts>(request, page)) {}

ChangeSheet::~ChangeSheet() = default;
ChangeSheet::ChangeSheet(ChangeSheet&&) noexcept = default;

int ChangeSheet::sheetCount() const {
    return static_cast<int>(parts_->pages.size());
}

void ChangeSheet::paintSheet(QPainter& painter, int index) const {
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    parts_->paintTitle(painter, index);
    for (const PlacedBlock& placed : parts_->pages[static_cast<std::size_t>(index)]) {
        placed.block->paint(painter, placed.box.translated(parts_->body.topLeft()));
    }
    parts_->paintFoot(painter);
    painter.restore();
}

}  // namespace bolthole
