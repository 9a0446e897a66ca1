#include "widgets/papers/change_sheet.h"

#include <algorithm>

#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/papers/change_sheet_blocks.h"
#include "widgets/papers/change_sheet_curves.h"
#include "widgets/papers/change_sheet_side.h"
#include "widgets/papers/change_sheet_words.h"
#include "widgets/papers/kit/flowed_paper.h"
#include "widgets/papers/wall_chart_words.h"
#include "widgets/words/starting_words.h"

namespace bolthole {

namespace {

class LaidChange : public FlowedPaper {
  public:
    LaidChange(const ChangeRequest& asked, const QPageLayout& page)
        : FlowedPaper(page, {.title = 4.6, .hasSecondLine = true, .scaleBar = asked.style.units},
                      startingHeading(asked.before, asked.after), cautionWords(asked.after)),
          request_(asked),
          comparison_(compareCars(request_.before, request_.after)),
          words_(sheetWordsOf(comparison_, request_.style)),
          make_(fonts(), width()) {
        addTurns();
        addChecks();
        addPicture(70, 36, [this](QPainter& painter, const QRectF& box) {
            drawSheetSide(painter, box, fonts(), comparison_);
        });
        addExpected();
        addNext();
        if (words_.differs) {
            addRoomToWrite();
        }
        flow(std::move(blocks_));
    }

  private:
    [[nodiscard]] SheetTitle title(int index) const override;
    void addTurns();
    void addChecks();
    void addExpected();
    void addNext();
    void addRoomToWrite();
    [[nodiscard]] QString tellingWords() const;
    // A picture that may be made higher to fill its page.
    void addPicture(double height, double stretch, std::function<void(QPainter&, const QRectF&)> paint) {
        blocks_.push_back({.above = 4, .height = height, .stretch = stretch, .paint = std::move(paint)});
    }
    void add(std::vector<SheetBlock> more) { std::ranges::move(more, std::back_inserter(blocks_)); }
    void addHeading(const QString& words, const QString& aside = {}) {
        blocks_.push_back(make_.heading(words, aside));
    }
    void addWords(const QString& words) { blocks_.push_back(make_.paragraph(words)); }

    ChangeRequest request_;
    Comparison comparison_;
    SheetWords words_;
    ChangeBlocks make_;
    std::vector<SheetBlock> blocks_;
};

SheetTitle LaidChange::title(int index) const {
    SheetTitle title = titleOf(request_.after.title, tr("change sheet"));
    title.asides = {{request_.date.toString(Qt::ISODate)}, {sheetWords(index, count())}};
    title.under = {{tr("from")},
                   {request_.beforeName.simplified(), true},
                   {tr("to")},
                   {request_.afterName.simplified(), true}};
    return title;
}

void LaidChange::addTurns() {
    if (!words_.problems.isEmpty()) {
        blocks_.push_back(alertBlock(tr("Warning"), words_.problems, width(), fonts()));
    }
    if (!words_.differs) {
        addHeading(tr("Nothing differs"));
        addWords(tr("The two cars are the same: nothing to turn, and every figure stays as it is."));
        return;
    }
    if (!words_.bolts.rows.empty() || !words_.lengths.rows.empty()) {
        addWords(tr(kBeforeBolts));
    }
    for (const SheetTable* table :
         {&words_.bolts, &words_.lengths, &words_.unshared, &words_.numbers, &words_.holes}) {
        add(make_.table(*table));
    }
    if (words_.bolts.rows.empty() && words_.lengths.rows.empty()) {
        addWords(tr("No bolt goes to another hole, and no link gets another length."));
    }
}

void LaidChange::addChecks() {
    if (!words_.checks.empty()) {
        addHeading(tr("Check again, before it moves"));
        add(make_.checks(words_.checks));
    }
}

QString LaidChange::tellingWords() const {
    const Units units = request_.style.units;
    const QString length = units == Units::inch
                               ? QStringLiteral("1/16")
                               : QString::fromStdString(fineFigureText(tellingChange(Quantity::length),
                                                                       Quantity::length, units));
    const QString angle =
        QString::fromStdString(figureText(tellingChange(Quantity::angle), Quantity::angle, units));
    return tr("bold: a change of %1 %2, %3°, 1 % or more")
        .arg(length, unitText(Quantity::length, units), angle);
}

void LaidChange::addExpected() {
    addHeading(words_.differs ? tr("What to expect") : tr("As it is"),
               words_.differs ? tellingWords() : QString());
    blocks_.back().freshPage = words_.differs;
    if (!words_.figures.empty()) {
        add(make_.figures(words_.figures));
    }
    for (const QString& sentence : words_.accuracy) {
        addWords(sentence);
    }
    if (!words_.quiet.isEmpty()) {
        addWords(words_.quiet);
    }
    if (words_.hasFarAway) {
        addWords(farAwayWords(request_.style.units));
    }
    addWords(words_.differs ? tr("Through travel, bump upward: before dashed, \u25CB at ride; after "
                                 "solid, \u25CF at ride.")
                            : tr("Through travel, bump upward."));
    blocks_.back().above = 2.5;
    blocks_.back().keepNext = true;
    addPicture(52, 34, [this](QPainter& painter, const QRectF& box) {
        drawSheetCurves(painter, box, fonts(), comparison_, request_.style.units);
    });
    blocks_.back().above = 1;
}

void LaidChange::addNext() {
    if (request_.next.isEmpty()) {
        return;
    }
    addHeading(tr("Next thing to try"), tr("computed launches; no real car has been compared yet"));
    for (const QString& sentence : request_.next) {
        addWords(sentence);
    }
}

void LaidChange::addRoomToWrite() {
    const QString angle =
        words_.pinionExpected.isEmpty() ? tr("pinion, °") : tr("pinion, expect ") + words_.pinionExpected;
    const QString shaft =
        words_.shaftExpected.isEmpty() ? tr("driveshaft, °") : tr("shaft, expect ") + words_.shaftExpected;
    const QString length = unitText(Quantity::length, request_.style.units);
    const QString weight = unitText(Quantity::mass, request_.style.units);
    const QStringList corners{tr("left front"), tr("right front"), tr("left rear"), tr("right rear")};
    addHeading(tr("Measured after the change"), tr("by ____________________  on ______________"));
    blocks_.push_back(make_.writingRow(tr("Angles at ride"), {angle, shaft}));
    blocks_.push_back(make_.writingRow(tr("Ride height, ") + length, corners));
    blocks_.push_back(make_.writingRow(tr("Corner weight, ") + weight, corners));
    blocks_.push_back(
        make_.writingRow(QStringLiteral("60 ft, s"), {tr("run 1"), tr("run 2"), tr("run 3"), tr("run 4")}));
    blocks_.push_back(make_.notes(tr("Notes")));
}

}  // namespace

ChangeSheet::ChangeSheet(const ChangeRequest& request, const QPageLayout& page)
    : PrintedSheets(std::make_unique<const LaidChange>(request, page)) {}

}  // namespace bolthole
