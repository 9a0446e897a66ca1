// Words of the fields for how sure a number is.

#include "geometry/uncertainty/uncertain_inputs.h"
#include "widgets/kit/translation.h"
#include "widgets/kit/unit_text.h"
#include "widgets/words/entered_words.h"

namespace bolthole {

namespace {

FieldWords toolWords(Field field) {
    switch (field) {
        case Field::tapeSpread:
            return {
                tr("Tape"), tr("tape, plus or minus"),
                tr("How far one length taken with the tape may be off: 95 of 100 lie within. Left empty, a "
                   "tape read to the nearest sixteenth at both ends is taken; the sixteenth is common "
                   "practice, no source.")};
        case Field::caliperSpread:
            return {tr("Calipers"), tr("calipers, plus or minus"),
                    tr("How far one length taken with calipers, over a bolt and back to a hole's center, may "
                       "be off: 95 of 100 lie within. Left empty, anything within a tenth of a millimeter is "
                       "taken to be as likely; common practice, no source.")};
        default:
            return {tr("Angle finder"), tr("angle finder, plus or minus"),
                    tr("How far one angle may be off: 95 of 100 lie within. Left empty, anything within half "
                       "a degree is taken to be as likely; common practice, no source.")};
    }
}

}  // namespace

bool isSpread(const FieldId& id) {
    return id.spread || id.field == Field::tapeSpread || id.field == Field::caliperSpread ||
           id.field == Field::angleFinderSpread;
}

FieldWords spreadWords(const Car& car, const FieldId& id) {
    if (!id.spread) {
        return toolWords(id.field);
    }
    FieldId number = id;
    number.spread = false;
    return {QStringLiteral("±"),
            tr("%1, plus or minus").arg(QString::fromStdString(numberWords(car, number))),
            tr("How far this one number may be off: 95 of 100 lie within. Left empty, it is as sure as the "
               "tool such numbers are taken with; 0: exact.")};
}

}  // namespace bolthole
