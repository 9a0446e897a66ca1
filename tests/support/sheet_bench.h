// A car sheet with what a window would do around it, for tests that type and click.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>
#include <memory>

#include "tests/support/typing.h"
#include "widgets/fields/car_sheet.h"
#include "widgets/fields/length_part.h"
#include "widgets/kit/theme.h"

namespace bolthole::test {

/// A point given in inches.
inline Eigen::Vector3d inches(double x, double y, double z) {
    return kMetresPerInch * Eigen::Vector3d(x, y, z);
}

/// A link bolted into the first hole at either end.
inline Link makeLink(const std::string& name, Side side, std::vector<Hole> chassis, std::vector<Hole> axle) {
    Link made;
    made.name = name;
    made.side = side;
    made.chassis.holes = std::move(chassis);
    made.axle.holes = std::move(axle);
    return made;
}

/// An invented car: two pairs of links and a track bar, rear tire radius 13 1/2 in.
inline Car inventedCar() {
    Car car;
    car.title = "Shop mule";
    car.wheelbase = 110 * kMetresPerInch;
    car.rearTireRadius = 13.5 * kMetresPerInch;
    car.frontTireRadius = 12.75 * kMetresPerInch;
    car.cgHeight = 22 * kMetresPerInch;
    car.cornerWeights = {450, 430, 340, 330};
    car.links.push_back(makeLink("lower", Side::both, {{-1, "front", inches(21.5, 18.5, 10.5)}},
                                 {{-1, "top", inches(0.5, 21, 9.75)},
                                  {-1, "middle", inches(0.5, 21, 8.5)},
                                  {-1, "bottom", inches(0.5, 21, 7.25)}}));
    car.links[0].axle.use = 1;
    car.links.push_back(makeLink(
        "upper", Side::both, {{-1, "high", inches(12.5, 16, 18.25)}, {-1, "low", inches(12.5, 16, 17.25)}},
        {{-1, "ear", inches(1.75, 7, 19.25)}}));
    car.links[1].adjuster = Adjuster{kUsualPitch, 2};
    car.links.push_back(makeLink("track bar", Side::center, {{-1, "frame", inches(-6, 20, 14)}},
                                 {{-1, "housing", inches(-6, -19, 13)}}));
    return car;
}

/// A sheet with what a window would do: every edit is applied and the result shown.
class SheetBench : public testing::Test {
  protected:
    static void SetUpTestSuite() { ThemeKeeper::instance().choose(Appearance::light); }

    SheetBench() : sheet_(std::make_unique<CarSheet>()) {
        state_.car = inventedCar();
        QObject::connect(sheet_.get(), &CarSheet::edited, sheet_.get(), [this](const Edit& edit) {
            edits_.push_back(edit);
            state_.car = bolthole::apply(state_.car, edit).car;
            sheet_->showState(state_);
        });
        QObject::connect(sheet_.get(), &CarSheet::selected, sheet_.get(), [this](const PointId& point) {
            state_.selection = point;
            sheet_->showState(state_);
        });
        sheet_->showState(state_);
        sheet_->resize(300, 900);
        sheet_->show();
        QApplication::setActiveWindow(sheet_.get());
    }

    template <class Kind>
    Kind* named(const QString& name) {
        return test::namedIn<Kind>(*sheet_, name, test::Among::all);
    }
    void type(const QString& name, const QString& text) {
        test::typeIn(*sheet_, name, text, test::Among::all);
    }

    template <class Kind>
    const Kind& lastEdit() {
        return *edits_.back().as<Kind>();
    }

    BenchState state_;
    std::unique_ptr<CarSheet> sheet_;
    std::vector<Edit> edits_;
};

}  // namespace bolthole::test
