// Words of the fields for what is wanted.

#include "widgets/kit/translation.h"
#include "widgets/words/entered_words.h"

namespace bolthole {

namespace {

FieldWords placeWords(Field field) {
    const QString behind =
        tr("At ride height, from the rear contact patch; minus is behind it. Both empty: any "
           "distance will do; one empty: infinitely far.");
    switch (field) {
        case Field::wantedIcNear:
            return {tr("IC, nearest"), tr("nearest wanted distance of the instant center"), behind};
        case Field::wantedIcFar:
            return {tr("IC, farthest"), tr("farthest wanted distance of the instant center"), behind};
        case Field::wantedIcLow:
            return {tr("IC height, least"), tr("least wanted height of the instant center"),
                    tr("Above the ground at ride height. Empty: any.")};
        default:
            return {tr("IC height, most"), tr("largest wanted height of the instant center"),
                    tr("Above the ground at ride height. Empty: any.")};
    }
}

FieldWords percentWords(Field field) {
    const QString change = tr("Anti-squat at full bump less that at full droop. Empty: any.");
    switch (field) {
        case Field::wantedLow:
            return {tr("Anti-squat, least"), tr("least wanted anti-squat"),
                    tr("At ride height. 100: the rear neither rises nor squats under a steady pull.")};
        case Field::wantedHigh:
            return {tr("Anti-squat, most"), tr("largest wanted anti-squat"), tr("At ride height.")};
        case Field::wantedChangeLow:
            return {tr("Anti-squat change, least"), tr("least wanted change of anti-squat through travel"),
                    change};
        default:
            return {tr("Anti-squat change, most"), tr("largest wanted change of anti-squat through travel"),
                    change};
    }
}

}  // namespace

FieldWords wantedWords(const FieldId& id) {
    switch (id.field) {
        case Field::wantedPinionChange:
            return {tr("Pinion turns at most"), tr("largest wanted change of the pinion's angle"),
                    tr("At ride height against now, nose up or down. Empty: any.")};
        case Field::wantedJoint:
            return {tr("Joint angle at most"), tr("largest wanted joint angle"),
                    tr("The larger of the two driveshaft joints' working angles anywhere in travel. Empty: "
                       "any.")};
        case Field::wantedLow:
        case Field::wantedHigh:
        case Field::wantedChangeLow:
        case Field::wantedChangeHigh:
            return percentWords(id.field);
        default:
            return placeWords(id.field);
    }
}

}  // namespace bolthole
