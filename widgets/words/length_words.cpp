#include "widgets/words/length_words.h"

#include "widgets/kit/translation.h"

namespace bolthole {

QString lengthsLabel(LengthTreatment lengths) {
    switch (lengths) {
        case LengthTreatment::keep:
            return tr("Keep every length");
        case LengthTreatment::refit:
            return tr("Refit every length");
        case LengthTreatment::uppers:
            break;
    }
    return tr("Refit the uppers");
}

QString lengthsHelp(LengthTreatment lengths) {
    switch (lengths) {
        case LengthTreatment::keep:
            return tr(
                "Only bolts move. Every link keeps its length, so the axle shifts and the "
                "pinion turns to wherever the links put them.");
        case LengthTreatment::refit:
            return tr(
                "Every link, with an adjuster or not, gets the length that leaves the axle in "
                "the place and attitude it was measured in. A link without an adjuster has "
                "to be made anew.");
        case LengthTreatment::uppers:
            break;
    }
    return tr(
        "Lowers and the track bar keep their lengths and place the axle; the uppers are refit "
        "so that the pinion keeps the angle it was measured at.");
}

}  // namespace bolthole
