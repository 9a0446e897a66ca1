// What stands still in a drag is kept as pixels: whatever changes, the picture is the one a new view would
// show.
#include <gtest/gtest.h>

#include <QImage>
#include <QStyleOptionToolButton>
#include <QToolButton>
#include <functional>

#include "tests/support/plain_car.h"
#include "widgets/views/across_view.h"
#include "widgets/views/side_view.h"

namespace bolthole {
namespace {

Car trackedCar() {
    Car car = plainCar();
    car.rearTrack = 1.5;
    car.frontTrack = 1.48;
    return car;
}

void solveAnew(BenchState& state) {
    state.solvedCar = state.car;
    state.trace = computeTrace(state.car);
    state.traceIsCurrent = true;
    state.cursor = state.trace.ride;
}

BenchState trackedState() {
    BenchState state;
    state.car = trackedCar();
    solveAnew(state);
    return state;
}

enum class Plane { side, rear, top };

std::unique_ptr<BenchPicture> viewOf(Plane plane) {
    if (plane == Plane::side) {
        return std::make_unique<SideView>();
    }
    return std::make_unique<AcrossView>(plane == Plane::rear ? ViewPlane::rear : ViewPlane::top);
}

QImage pictureOf(BenchPicture& view, const BenchState& state, bool ofAll = false) {
    view.resize(700, 460);
    ofAll ? view.showAll() : view.showLinks();
    view.showState(state);
    return view.grab().toImage().convertToFormat(QImage::Format_RGB32);
}

// Pixels that differ by more than the rounding of colors.
int differing(const QImage& one, const QImage& other) {
    int count = 0;
    for (int y = 0; y < one.height(); ++y) {
        for (int x = 0; x < one.width(); ++x) {
            const QRgb here = one.pixel(x, y);
            const QRgb there = other.pixel(x, y);
            count += std::abs(qRed(here) - qRed(there)) > 2 || std::abs(qGreen(here) - qGreen(there)) > 2 ||
                     std::abs(qBlue(here) - qBlue(there)) > 2;
        }
    }
    return count;
}

struct Change {
    const char* what;
    std::function<void(BenchState&)> make;
};

const std::vector<Change> kChanges{
    {"rear tires", [](BenchState& state) { state.car.rearTireRadius += 0.02; }},
    {"front tires", [](BenchState& state) { state.car.frontTireRadius += 0.02; }},
    {"wheelbase", [](BenchState& state) { state.car.wheelbase -= 0.1; }},
    {"rear track", [](BenchState& state) { state.car.rearTrack = 1.3; }},
    {"no rear track", [](BenchState& state) { state.car.rearTrack.reset(); }},
    {"front track", [](BenchState& state) { state.car.frontTrack = 1.2; }},
    {"no front track", [](BenchState& state) { state.car.frontTrack.reset(); }},
    {"a body", [](BenchState& state) { state.car.body = Body::wagon; }},
    {"pinion joint", [](BenchState& state) { state.car.driveline->pinionJoint.z() += 0.02; }},
    {"output joint", [](BenchState& state) { state.car.driveline->outputJoint.z() += 0.02; }},
    {"output angle", [](BenchState& state) { state.car.driveline->outputAngle += 0.2; }},
    {"no driveline", [](BenchState& state) { state.car.driveline.reset(); }},
    {"axle end without a track",
     [](BenchState& state) {
         state.car.rearTrack.reset();
         state.car.links[0].axle.holes[0].at.y() = 0.7;
     }},
    {"units", [](BenchState& state) { state.style.units = Units::metric; }},
};

class StillLayersOf : public testing::TestWithParam<Plane> {};

TEST_P(StillLayersOf, AViewThatWasWorkedInShowsWhatANewOneShows) {
    for (const bool ofAll : {false, true}) {
        for (const Change& change : kChanges) {
            BenchState state = trackedState();
            const auto worked = viewOf(GetParam());
            for (int again = 0; again < 3; ++again) {  // the axle is kept from the second time on
                static_cast<void>(pictureOf(*worked, state, ofAll));
            }
            change.make(state);
            solveAnew(state);
            for (int again = 0; again < 3; ++again) {
                const QImage here = pictureOf(*worked, state, ofAll);
                const auto fresh = viewOf(GetParam());
                EXPECT_EQ(differing(here, pictureOf(*fresh, state, ofAll)), 0)
                    << change.what << ", painted " << again << ofAll;
            }
        }
    }
}

// At another travel the axle moves from step to step: nothing of the last place stays.
TEST_P(StillLayersOf, TheAxleLeavesNothingBehind) {
    BenchState state = trackedState();
    const auto worked = viewOf(GetParam());
    for (const std::size_t at : {10U, 10U, 10U, 40U, 41U, 42U, 42U, 42U, 10U}) {
        state.cursor = state.trace.stations[at];
        state.cursorTravel = state.cursor[Figure::travel];
        const QImage here = pictureOf(*worked, state);
        const auto fresh = viewOf(GetParam());
        EXPECT_EQ(differing(here, pictureOf(*fresh, state)), 0) << at;
    }
}

TEST_P(StillLayersOf, AnotherThemeIsSeenAtOnce) {
    ThemeKeeper::instance().choose(Appearance::light);  // as every window begins
    const BenchState state = trackedState();
    const auto worked = viewOf(GetParam());
    worked->show();  // what is not seen is dressed later
    for (int again = 0; again < 3; ++again) {
        static_cast<void>(pictureOf(*worked, state));
    }
    ThemeKeeper::instance().choose(Appearance::dark);
    const QImage here = pictureOf(*worked, state);
    const auto fresh = viewOf(GetParam());
    fresh->show();
    EXPECT_EQ(differing(here, pictureOf(*fresh, state)), 0);
    ThemeKeeper::instance().choose(Appearance::light);
}

std::string seenFrom(const testing::TestParamInfo<Plane>& each) {
    return each.param == Plane::side ? "side" : each.param == Plane::rear ? "rear" : "top";
}

INSTANTIATE_TEST_SUITE_P(Views, StillLayersOf, testing::Values(Plane::side, Plane::rear, Plane::top),
                         seenFrom);

// The buttons on the picture keep their look as a picture too: what the toolkit would paint now.
TEST(KeptButtons, LookAsTheirStyleHasThem) {
    const BenchState state = trackedState();
    SideView view;
    static_cast<void>(pictureOf(view, state));
    const QList<QToolButton*> buttons = view.findChildren<QToolButton*>();
    ASSERT_EQ(buttons.size(), 4);
    const auto picture = [](QToolButton& button) {
        return button.grab().toImage().convertToFormat(QImage::Format_RGB32);
    };
    for (const Appearance appearance : {Appearance::light, Appearance::dark}) {
        ThemeKeeper::instance().choose(appearance);
        for (QToolButton* button : buttons) {
            for (const bool isDown : {false, true, false}) {
                for (const bool isEnabled : {true, false}) {
                    button->setEnabled(isEnabled);
                    button->setDown(isDown);
                    QToolButton plain(&view);
                    plain.setText(button->text());
                    plain.setEnabled(isEnabled);
                    plain.setDown(isDown);
                    plain.resize(button->size());
                    EXPECT_EQ(differing(picture(*button), picture(plain)), 0)
                        << button->text().toStdString() << isDown << isEnabled;
                }
            }
            button->setEnabled(true);
        }
    }
    ThemeKeeper::instance().choose(Appearance::light);
}

}  // namespace
}  // namespace bolthole
