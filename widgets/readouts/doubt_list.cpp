#include "widgets/readouts/doubt_list.h"

#include <QVBoxLayout>
#include <algorithm>

#include "geometry/car/fields.h"
#include "geometry/checks/fixes.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

QString badgeOf(Severity severity) {
    switch (severity) {
        case Severity::danger:
            return DoubtRow::tr("Danger");
        case Severity::wrong:
            return DoubtRow::tr("Wrong");
        case Severity::check:
            break;
    }
    return DoubtRow::tr("Check");
}

/// What is the case, and of which link: several may be alike but for that.
QString causeOf(const Car& car, const Doubt& doubt) {
    const std::string& cause = doubt.finding.cause;
    if (doubt.id.link < 0) {
        return QString::fromStdString(cause);
    }
    const std::string link = linkWords(car, doubt.id.link);
    return QString::fromStdString(cause.find(link) != std::string::npos ? cause : link + ": " + cause);
}

DoubtWords wordsOf(const Car& car, const Doubt& doubt, const std::optional<Fix>& fix) {
    const Finding& finding = doubt.finding;
    return {badgeOf(finding.severity), finding.severity != Severity::check,
            capitalized(causeOf(car, doubt)) + u'.',
            finding.follows.empty() ? QString() : capitalized(QString::fromStdString(finding.follows)) + u'.',
            fix ? QString::fromStdString(fix->words) : QString()};
}

}  // namespace

DoubtList::DoubtList(QWidget* parent) : QuietScroller(parent) {
    setObjectName(QStringLiteral("doubtList"));
    setAccessibleName(tr("Warnings"));
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* inside = new QWidget(this);
    layout_ = new QVBoxLayout(inside);
    layout_->setContentsMargins(4, 4, 4, 4);
    layout_->setSpacing(0);
    setWidget(inside);
    build();
}

std::vector<DoubtList::Row> DoubtList::rowsOf(const BenchState& state) {
    std::vector<Row> rows;
    for (const Fault& fault : state.faults) {
        rows.push_back(
            {{tr("Stopped"), true, tr("Can't compute: %1.").arg(QString::fromStdString(fault.reason)),
              tr("In the car file: %1").arg(QString::fromStdString(fault.path)), QString()},
             fault.id,
             Edit()});
    }
    std::vector<Doubt> doubts = state.doubts;
    std::ranges::stable_sort(doubts, {}, [](const Doubt& doubt) { return doubt.finding.severity; });
    for (const Doubt& doubt : doubts) {
        const std::optional<Fix> fix = sureFix(state.car, doubt);
        rows.push_back({wordsOf(state.car, doubt, fix), doubt.id, fix ? fix->edit : Edit()});
    }
    return rows;
}

void DoubtList::showState(const BenchState& state) {
    std::vector<Row> rows = rowsOf(state);
    const bool isSame = std::ranges::equal(rows, rows_, {}, &Row::words, &Row::words);
    rows_ = std::move(rows);  // fields and fixes may differ where the words do not
    if (!isSame) {
        build();
    }
}

void DoubtList::build() {
    setFocusProxy(nullptr);
    while (QLayoutItem* item = layout_->takeAt(0)) {
        if (QWidget* row = item->widget()) {
            row->hide();
            row->setParent(nullptr);
            row->deleteLater();  // its button may be what called
        }
        delete item;
    }
    for (std::size_t index = 0; index < rows_.size(); ++index) {
        auto* row = new DoubtRow(rows_[index].words, widget());
        connect(row, &DoubtRow::clicked, this, [this, index] { emit fieldWanted(rows_[index].field); });
        connect(row, &DoubtRow::fixWanted, this, [this, index] { emit edited(Edit(rows_[index].fix)); });
        layout_->addWidget(row);
        if (index == 0) {
            setFocusProxy(row);
        }
    }
    if (rows_.empty()) {
        auto* nothing =
            new ToneLabel(ToneLabel::Tone::muted, tr("Nothing looks wrong in what was entered."), widget());
        nothing->setContentsMargins(8, 8, 8, 8);
        layout_->addWidget(nothing);
    }
    layout_->addStretch(1);
}

}  // namespace bolthole
