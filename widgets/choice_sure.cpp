#include "widgets/choice_sure.h"

#include <QCoreApplication>
#include <cmath>

#include "widgets/sure_words.h"

namespace bolthole {

namespace {

using Kind = ChoiceColumn::Kind;

QString words(const char* text) {
    return QCoreApplication::translate("ChoiceTable", text);
}

QString plusMinus(double uncertainty) {
    return sureWords(uncertainty, Quantity::percent, Units::metric);
}

QString percent(double value) {
    return QString::fromStdString(figureText(value, Quantity::percent, Units::metric));
}

bool isAlike(const ChoiceList::Difference& apart) {
    return cannotTellApart(apart.value, apart.uncertainty);
}

}  // namespace

QString sureHelp(const ChoiceColumn& column) {
    return column.kind == Kind::sure
               ? words(QT_TRANSLATE_NOOP("ChoiceTable",
                                         "How far the anti-squat may be off, measured as the car was: 95 of "
                                         "100 lie within. Computed once all choices are there."))
               : words(QT_TRANSLATE_NOOP("ChoiceTable",
                                         "Whether the anti-squat can be told from that of the holes in use. "
                                         "What both rest on was measured once, and its errors cancel. Sorts "
                                         "from alike to sure."));
}

QString sureCell(const ChoiceColumn& column, const ChoiceList& list, std::size_t at) {
    const QString unknown(QChar(0x2014));
    if (column.kind == Kind::sure) {
        return list.spread(at) == nullptr ? unknown : plusMinus(list.spread(at)->antiSquat);
    }
    if (list.present() == at) {
        return {};
    }
    const std::optional<ChoiceList::Difference> apart = list.difference(at);
    return !apart            ? unknown
           : isAlike(*apart) ? cannotTellCell()
                             : words(QT_TRANSLATE_NOOP("ChoiceTable", "yes"));
}

double sureKey(const ChoiceColumn& column, const ChoiceList& list, std::size_t at) {
    if (column.kind == Kind::sure) {
        return list.spread(at) == nullptr ? kAbsent : list.spread(at)->antiSquat;
    }
    if (list.present() == at) {
        return 0;
    }
    const std::optional<ChoiceList::Difference> apart = list.difference(at);
    return !apart || apart->uncertainty == 0 ? kAbsent : std::abs(apart->value) / apart->uncertainty;
}

QString cannotTellCell() {
    return words(QT_TRANSLATE_NOOP("ChoiceTable", "can't tell apart"));
}

QString toldApartInWords(const ChoiceList& list, std::size_t at) {
    if (list.spread(at) == nullptr) {
        return {};
    }
    const std::optional<ChoiceList::Difference> apart = list.difference(at);
    if (!apart) {
        return words(QT_TRANSLATE_NOOP("ChoiceTable", "Anti-squat %1 % %2."))
            .arg(percent(list.items()[at].antiSquat), plusMinus(list.spread(at)->antiSquat));
    }
    const QString pattern =
        isAlike(*apart)
            ? words(QT_TRANSLATE_NOOP("ChoiceTable", "Can't tell these two apart: anti-squat %1 % %2."))
        : apart->value > 0
            ? words(QT_TRANSLATE_NOOP("ChoiceTable", "Sure: anti-squat %1 % %2 more than now."))
            : words(QT_TRANSLATE_NOOP("ChoiceTable", "Sure: anti-squat %1 % %2 less than now."));
    return pattern.arg(percent(std::abs(apart->value)), plusMinus(apart->uncertainty));
}

}  // namespace bolthole
