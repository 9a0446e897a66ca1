// F1 in a field: every number of every demo car has a picture of how it is measured, or says why it has none.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/demo_car.h"
#include "tests/support/plain_car.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/pages/measure/how_to_panel.h"
#include "widgets/pages/measure/point_picture.h"
#include "widgets/words/field_words.h"

namespace bolthole {
namespace {

TEST(HowTo, EveryNumberOfEveryDemoCarIsPicturedOrSaysWhyNot) {
    HowToPanel panel;
    auto* picture = panel.findChild<PointPicture*>();
    auto* words = panel.findChild<ToneLabel*>(QStringLiteral("howToWords"));
    for (const char* name :
         {"long-roof-wagon", "light-coupe", "notch-sedan", "short-pickup", "gully-roadster"}) {
        BenchState state;
        state.car = demoCar(name);
        state.solvedCar = state.car;
        std::vector<FieldId> ids = allIds(state.car);
        addIds(Scope::tool, {}, ids);
        std::size_t pictured = 0;
        for (const FieldId& id : ids) {
            if (!state.car.driveline && ruleOf(id.field).scope == Scope::driveline) {
                continue;
            }
            panel.showNumber(state, id, nullptr);
            const std::string where = std::string(name) + " " + jsonPath(id);
            if (whyNoHowTo(id.field).isEmpty()) {
                EXPECT_TRUE(picture->isVisible()) << where;
                EXPECT_FALSE(picture->litAt().empty()) << where;
                ++pictured;
            } else {
                EXPECT_FALSE(picture->isVisible()) << where;
                EXPECT_TRUE(words->text().contains(QStringLiteral("No picture: "))) << where;
            }
            EXPECT_TRUE(words->text().startsWith(wordsFor(state.car, id).howTo)) << where;
        }
        EXPECT_GT(pictured, 150U) << name;
    }
}

}  // namespace
}  // namespace bolthole
