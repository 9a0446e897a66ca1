// The pictures of how one number is measured: every number has one or a reason why not, its letter stands in
// it once and is lit, and no words run into each other, into the lit letter or out of the frame.
#include "widgets/papers/howto/how_to_picture.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QImage>
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "geometry/edits/starting_car.h"
#include "tests/support/plain_car.h"
#include "widgets/papers/sheets/measuring_plan.h"

namespace bolthole {
namespace {

constexpr double kPixels = 6;  // for each mm
constexpr double kRing = 5.7;  // mm from a lit letter's center to its ring's outer edge, unscaled
const QRectF kPanel(0, 0, 170, 66);

/// A car with one of each part that its numbers are measured differently on.
Car carOfAllParts() {
    Car car = plainCar();
    SuspensionPart part = car.springs.front();
    car.springs.clear();
    for (const PartKind kind :
         {PartKind::spring, PartKind::shock, PartKind::coilOver, PartKind::bumpStop, PartKind::strap}) {
        part.kind = kind;
        car.springs.push_back(part);
    }
    return car;
}

std::vector<FieldId> everyId(const Car& car) {
    std::vector<FieldId> ids = allIds(car);
    addIds(Scope::tool, {}, ids);
    return ids;
}

/// Every picture there is with each letter that a number is.
std::vector<std::pair<std::string, HowToPicture>> everyPicture() {
    std::vector<std::pair<std::string, HowToPicture>> all;
    const Car car = carOfAllParts();
    for (const FieldId& id : everyId(car)) {
        if (const std::optional<HowToPicture> picture = howToPicture(car, id)) {
            all.emplace_back(jsonPath(id), *picture);
        }
    }
    for (int field = 0; field < static_cast<int>(PassField::count); ++field) {
        all.emplace_back("pass " + std::string(ruleOf(static_cast<PassField>(field)).words),
                         howToPicture(static_cast<PassField>(field)));
    }
    for (int number = 0; number <= static_cast<int>(PlateNumber::cornerUp); ++number) {
        all.emplace_back("plate " + std::to_string(number), howToPicture(static_cast<PlateNumber>(number)));
    }
    return all;
}

HowToMarks drawnOn(QImage& canvas, const HowToPicture& picture, const QRectF& box = kPanel) {
    const PrintFonts fonts;
    canvas = QImage((kPixels * box.size()).toSize(), QImage::Format_RGB32);
    canvas.fill(Qt::white);
    QPainter painter(&canvas);
    painter.scale(kPixels, kPixels);
    return drawHowTo(painter, box, fonts, picture);
}

// What nobody can picture, and why; a number that is added has to be pictured or to be put here.
TEST(HowToPicture, TheNumbersWithoutOneAreTheseAndSayWhy) {
    const std::string target = "a target: chosen, not measured";
    const std::string judgement = "no tool of a shop reads it: a judgement, or left empty";
    std::map<std::string, std::string> expected{
        {"travel.steps", "how finely the program computes: chosen, nothing on the car"},
        {"travel.front_ratio", "which motion of the car is looked at: chosen, nothing on the car"},
        {"launch.load_factor", "a qualified person's choice, nothing on the car"},
        {"launch.tire.lag", judgement},
        {"launch.tire.damping", judgement},
    };
    for (const FieldRule* rule : rulesOf(Scope::target)) {
        expected[std::string(rule->path)] = target;
    }
    std::map<std::string, std::string> found;
    for (const FieldRule& rule : fieldRules()) {
        if (const QString why = whyNoHowTo(rule.field); !why.isEmpty()) {
            found[std::string(rule.path)] = why.toStdString();
        }
    }
    EXPECT_EQ(found, expected);
}

TEST(HowToPicture, EveryOtherNumberHasOneHereOrInTheSheetsPictureOfTheCar) {
    const Car car = carOfAllParts();
    std::set<Field> onSheet;
    for (const PlanArea& area : measuringPlan(car)) {
        for (const PlanTable& table : area.tables) {
            for (const PlanRow& row : table.rows) {
                for (const std::optional<FieldId>& id : row.fields) {
                    if (id) {
                        onSheet.insert(id->field);
                    }
                }
            }
        }
        for (const PlanNumber& number : area.numbers) {
            if (!number.letter.isEmpty()) {
                onSheet.insert(number.id.field);
            }
        }
    }
    for (const FieldId& id : everyId(car)) {
        const bool isPictured = howToPicture(car, id).has_value();
        EXPECT_NE(isPictured || onSheet.contains(id.field), !whyNoHowTo(id.field).isEmpty()) << jsonPath(id);
    }
}

TEST(HowToPicture, TheLetterOfTheNumberStandsInItOnceAndIsLit) {
    for (const auto& [name, picture] : everyPicture()) {
        QImage canvas;
        const HowToMarks drawn = drawnOn(canvas, picture);
        const auto& signs = drawn.marks.signs;
        ASSERT_EQ(std::ranges::count(signs, picture.letter), 1) << name;
        const auto at = static_cast<std::size_t>(std::ranges::find(signs, picture.letter) - signs.begin());
        const QRectF bubble = drawn.marks.bubbles[at];
        int pale = 0;  // of four places of the ring, as lines of the picture may cross it
        for (const QPointF& way : {QPointF(1, 1), QPointF(1, -1), QPointF(-1, 1), QPointF(-1, -1)}) {
            const QPointF beside = bubble.center() + 0.6 * bubble.width() * way;
            const QColor lit = canvas.pixelColor((kPixels * beside).toPoint());
            pale += lit.red() - lit.blue() > 100 ? 1 : 0;
        }
        EXPECT_GE(pale, 3) << name << ": a pale ring around it";
        for (std::size_t other = 0; other < signs.size(); ++other) {
            EXPECT_TRUE(kPanel.contains(drawn.marks.bubbles[other])) << name;
            for (std::size_t more = 0; more < other; ++more) {
                EXPECT_FALSE(drawn.marks.bubbles[other].intersects(drawn.marks.bubbles[more])) << name;
            }
        }
    }
}

TEST(HowToPicture, TheNumbersOfAPassAndOfAPlateHaveOnesOfTheirOwn) {
    std::set<std::pair<void (*)(HowToSketch&), QString>> times;
    for (const PassField field : {PassField::sixtyFoot, PassField::threeThirty, PassField::eighth,
                                  PassField::eighthSpeed, PassField::quarter, PassField::quarterSpeed}) {
        times.insert({howToPicture(field).draw, howToPicture(field).letter});
    }
    EXPECT_EQ(times.size(), 6U);
    std::set<QString> letters;
    for (int number = 0; number <= static_cast<int>(PlateNumber::cornerUp); ++number) {
        letters.insert(howToPicture(static_cast<PlateNumber>(number)).letter);
    }
    EXPECT_EQ(letters.size(), 5U);
}

TEST(HowToPicture, WordsKeepClearOfEachOtherOfTheLitLetterAndOfTheFrame) {
    const double scale = (kPanel.height() - 5) / HowToSketch::kCanvas.height();
    for (const auto& [name, picture] : everyPicture()) {
        QImage canvas;
        const HowToMarks drawn = drawnOn(canvas, picture);
        const auto& signs = drawn.marks.signs;
        const auto lit = static_cast<std::size_t>(std::ranges::find(signs, picture.letter) - signs.begin());
        ASSERT_LT(lit, signs.size());
        const QPointF center = drawn.marks.bubbles[lit].center();
        for (std::size_t one = 0; one < drawn.words.size(); ++one) {
            const QRectF& words = drawn.words[one];
            EXPECT_TRUE(kPanel.adjusted(1, 1, -1, -1).contains(words)) << name << ", words " << one;
            const QPointF nearest(std::clamp(center.x(), words.left(), words.right()),
                                  std::clamp(center.y(), words.top(), words.bottom()));
            EXPECT_GT(std::hypot(center.x() - nearest.x(), center.y() - nearest.y()), kRing * scale)
                << name << ", words " << one << " and letter " << picture.letter.toStdString();
            for (const QRectF& bubble : drawn.marks.bubbles) {
                EXPECT_FALSE(bubble.intersects(words)) << name << ", words " << one;
            }
            for (std::size_t other = 0; other < one; ++other) {
                EXPECT_FALSE(words.intersects(drawn.words[other]))
                    << name << ", words " << other << " and " << one;
            }
        }
    }
}

// One painter for screen and paper: half as wide, all of it is there at half the size.
TEST(HowToPicture, ItFitsItsBox) {
    const Car car = plainCar();
    const HowToPicture picture = *howToPicture(car, {.field = Field::rollout});
    QImage canvas;
    const HowToMarks large = drawnOn(canvas, picture, QRectF(0, 0, 165, 63));
    const HowToMarks small = drawnOn(canvas, picture, QRectF(0, 0, 85, 63));
    ASSERT_EQ(large.words.size(), small.words.size());
    EXPECT_NEAR(small.words[0].width(), large.words[0].width() / 2, 0.01);
    EXPECT_NEAR(small.marks.points[0].x(), 2.5 + (large.marks.points[0].x() - 2.5) / 2, 0.01);
}

}  // namespace
}  // namespace bolthole
