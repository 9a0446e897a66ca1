#include "widgets/readouts/warning_list.h"

#include <QVBoxLayout>
#include <algorithm>

#include "geometry/car/fields.h"
#include "geometry/checks/fixes.h"
#include "geometry/units/say.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/kit/unit_text.h"

namespace bolthole {

namespace {

QString badgeOf(Severity severity) {
    switch (severity) {
        case Severity::danger:
            return WarningRow::tr("Danger");
        case Severity::wrong:
            return WarningRow::tr("Wrong");
        case Severity::unmeasured:
            return WarningRow::tr("Not measured yet");
        case Severity::check:
            break;
    }
    return WarningRow::tr("Check");
}

/// What is the case, and of which link: several may be alike but for that.
QString causeOf(const Car& car, const Warning& warning) {
    const std::string& cause = warning.finding.cause;
    if (warning.id.link < 0) {
        return QString::fromStdString(cause);
    }
    const std::string link = linkWords(car, warning.id.link);
    return QString::fromStdString(cause.find(link) != std::string::npos ? cause : say("%1: %2", link, cause));
}

WarningWords wordsOf(const Car& car, const Warning& warning, const std::optional<Fix>& fix) {
    const Finding& finding = warning.finding;
    return {badgeOf(finding.severity),
            finding.severity == Severity::danger || finding.severity == Severity::wrong,
            capitalized(causeOf(car, warning)) + u'.',
            finding.follows.empty() ? QString() : capitalized(QString::fromStdString(finding.follows)) + u'.',
            fix ? QString::fromStdString(fix->words) : QString()};
}

}  // namespace

WarningList::WarningList(QWidget* parent) : QuietScroller(parent) {
    setObjectName(QStringLiteral("warningList"));
    setAccessibleName(tr("Warnings"));
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* inside = new QWidget(this);
    layout_ = new QVBoxLayout(inside);
    layout_->setContentsMargins(4, 4, 4, 4);
    layout_->setSpacing(0);
    setWidget(inside);
    build();
}

std::vector<WarningList::Row> WarningList::rowsOf(const BenchState& state) {
    std::vector<Row> rows;
    for (const Fault& fault : state.faults) {
        rows.push_back(
            {{tr("Stopped"), true, tr("Can't compute: %1.").arg(QString::fromStdString(fault.reason)),
              tr("In the car file: %1").arg(QString::fromStdString(fault.path)), QString()},
             fault.id,
             Edit()});
    }
    std::vector<Warning> warnings = state.warnings;
    std::ranges::stable_sort(warnings, {}, [](const Warning& warning) { return warning.finding.severity; });
    for (const Warning& warning : warnings) {
        const std::optional<Fix> fix = certainFix(state.car, warning);
        rows.push_back({wordsOf(state.car, warning, fix), warning.id, fix ? fix->edit : Edit()});
    }
    return rows;
}

void WarningList::showState(const BenchState& state) {
    std::vector<Row> rows = rowsOf(state);
    const bool isSame = std::ranges::equal(rows, rows_, {}, &Row::words, &Row::words);
    rows_ = std::move(rows);  // fields and fixes may differ where the words do not
    if (!isSame) {
        build();
    }
}

void WarningList::build() {
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
        auto* row = new WarningRow(rows_[index].words, widget());
        connect(row, &WarningRow::clicked, this, [this, index] { emit fieldRequested(rows_[index].field); });
        connect(row, &WarningRow::fixRequested, this, [this, index] { emit edited(Edit(rows_[index].fix)); });
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
