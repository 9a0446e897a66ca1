// Words of the fields for the uncertainty of a number.
#include "geometry/uncertainty/uncertain_inputs.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/entered_words.h"

namespace bolthole {

FieldWords fieldUncertaintyWords(const Car& car, const FieldId& id) {
    FieldId number = id;
    number.uncertainty = false;
    return {QStringLiteral("±"),
            tr("%1, plus or minus").arg(QString::fromStdString(numberWords(car, number))),
            tr("How far this one number may be off: 95 of 100 lie within. Left empty, it is as sure as the "
               "tool such numbers are taken with; 0: exact.")};
}

}  // namespace bolthole
