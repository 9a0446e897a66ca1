#include "widgets/board/combination_uncertainty.h"

#include <cmath>

#include "widgets/kit/translation.h"
#include "widgets/words/starting_words.h"
#include "widgets/words/uncertainty_words.h"

namespace bolthole {

namespace {

using Kind = CombinationColumn::Kind;
using Basis = CombinationList::Basis;

QString plusMinus(double uncertainty) {
    return uncertaintyWords(uncertainty, Quantity::percent, Units::metric);
}

QString percentText(double value) {
    return QString::fromStdString(figureText(value, Quantity::percent, Units::metric));
}

bool isAlike(const CombinationList::Difference& apart) {
    return cannotTellApart(apart.value, apart.uncertainty);
}

}  // namespace

QString uncertaintyHelp(const CombinationColumn& column) {
    return column.kind == Kind::uncertainty
               ? tr("How far the anti-squat may be off, measured as the car was: 95 of "
                    "100 lie within. Computed once all combinations are there.")
               : tr("Whether the anti-squat can be told from that of the current holes. "
                    "What both rest on was measured once, and its errors cancel. Sorts "
                    "from alike to sure.");
}

QString uncertaintyCell(const CombinationColumn& column, const CombinationList& list, std::size_t at) {
    const QString unknown(QChar(0x2014));
    if (column.kind == Kind::uncertainty) {
        return list.uncertainty(at) == nullptr
                   ? (list.restsOnStarts(at, Basis::weights) ? noUncertaintyWords() : unknown)
                   : plusMinus(list.uncertainty(at)->antiSquat);
    }
    if (list.present() == at) {
        return {};
    }
    const std::optional<CombinationList::Difference> apart = list.difference(at);
    return !apart ? unknown : isAlike(*apart) ? cannotTellCell() : tr("yes");
}

double uncertaintyKey(const CombinationColumn& column, const CombinationList& list, std::size_t at) {
    if (column.kind == Kind::uncertainty) {
        return list.uncertainty(at) == nullptr ? kAbsent : list.uncertainty(at)->antiSquat;
    }
    if (list.present() == at) {
        return 0;
    }
    const std::optional<CombinationList::Difference> apart = list.difference(at);
    return !apart || apart->uncertainty == 0 ? kAbsent : std::abs(apart->value) / apart->uncertainty;
}

QString cannotTellCell() {
    return tr("can't tell apart");
}

QString toldApartInWords(const CombinationList& list, std::size_t at) {
    if (list.uncertainty(at) == nullptr) {
        return list.restsOnStarts(at, Basis::weights)
                   ? tr("No ±, as it rests on %1.").arg(list.startingWords(at, Basis::weights))
                   : QString();
    }
    const std::optional<CombinationList::Difference> apart = list.difference(at);
    if (!apart) {
        return tr("Anti-squat %1 % %2.")
            .arg(percentText(list.items()[at].antiSquat), plusMinus(list.uncertainty(at)->antiSquat));
    }
    const QString pattern = isAlike(*apart)    ? tr("Can't tell these two apart: anti-squat %1 % %2.")
                            : apart->value > 0 ? tr("Sure: anti-squat %1 % %2 more than now.")
                                               : tr("Sure: anti-squat %1 % %2 less than now.");
    return pattern.arg(percentText(std::abs(apart->value)), plusMinus(apart->uncertainty));
}

}  // namespace bolthole
