// How weights, tires and rates are measured.
#include "widgets/kit/translation.h"
#include "widgets/papers/howto/how_to_drawings.h"

namespace bolthole {

namespace {

using how_to_line::kHeavy;
using how_to_line::kPart;
using how_to_line::kThin;

/// A car's outline from its left side, front to the right, on two tires of radius 7; its rear axle at `rear`.
void drawCar(HowToSketch& sketch, QPointF rear) {
    const auto at = [&](double x, double y) { return rear + QPointF(x, y); };
    sketch.shape(
        {at(-15, 2), at(-15, -8), at(-4, -10), at(6, -19), at(28, -19), at(40, -10), at(60, -7), at(62, 2)});
    sketch.tire(rear, 7);
    sketch.tire(rear + QPointF(46, 0), 7);
}

/// The rear axle from behind on two tires.
void drawAxle(HowToSketch& sketch, double left, double right, double ground) {
    sketch.tread({left, ground - 15}, 12, 30);
    sketch.tread({right, ground - 15}, 12, 30);
    sketch.line({left + 6, ground - 15}, {right - 6, ground - 15}, 2);
    sketch.circle({(left + right) / 2, ground - 15}, 5.5);
}

}  // namespace

void drawOneScale(HowToSketch& sketch) {
    sketch.box(QRectF(44, 16, 34, 24), kPart, 2);
    sketch.say({61, 29}, tr("all of it"), Qt::AlignHCenter);
    sketch.scale(QRectF(38, 42, 46, 6), {112, 34}, 'A');
    sketch.ground(20, 140, 50);
}

void drawDriver(HowToSketch& sketch) {
    sketch.circle({60, 9}, 5);
    sketch.line({56, 9}, {64, 9}, kThin);
    sketch.shape({{53, 15}, {67, 15}, {66, 32}, {65, 46}, {61, 46}, {60, 34}, {59, 46}, {55, 46}, {54, 32}});
    sketch.scale(QRectF(44, 47, 32, 5), {104, 36}, 'A');
    sketch.ground(20, 140, 54);
    sketch.say({72, 10}, tr("helmet, suit, boots: dressed to drive"));
}

void drawTank(HowToSketch& sketch) {
    sketch.box(QRectF(10, 14, 40, 26), kPart, 3);
    sketch.line({10, 27}, {50, 27}, kThin);
    sketch.box(QRectF(40, 9, 6, 5));
    sketch.dashed({50, 27}, {58, 27});
    sketch.letter({61, 27}, 'C');
    sketch.say({68, 28}, tr("its level"));
    sketch.letter({30, 21}, 'A');
    sketch.say({30, 47}, tr("full: cans poured in, counted"), Qt::AlignHCenter);
    sketch.shape({{100, 14}, {118, 14}, {116, 38}, {102, 38}});
    for (int mark = 1; mark < 5; ++mark) {
        sketch.line({103, 14 + 4.6 * mark}, {107, 14 + 4.6 * mark}, kThin);
    }
    sketch.say({109, 10}, tr("one measure of it"), Qt::AlignHCenter);
    sketch.scale(QRectF(94, 39, 30, 5), {142, 34}, 'B');
    sketch.ground(84, 156, 46);
    sketch.say({80, 55}, tr("no flame, no running engine about: fuel vapor burns"), Qt::AlignHCenter, true);
}

void drawTruckScale(HowToSketch& sketch) {
    const auto platform = [&](double x, double wide) {
        sketch.box(QRectF(x, 36, wide, 5));
        sketch.line({x + 4, 41}, {x + 4, 46}, kHeavy);
        sketch.line({x + wide - 4, 41}, {x + wide - 4, 46}, kHeavy);
    };
    sketch.ground(2, 108, 47);
    platform(8, 30);
    platform(54, 30);
    drawCar(sketch, {22, 28});
    sketch.say({22, 53}, tr("rear axle alone"), Qt::AlignHCenter);
    sketch.say({70, 53}, tr("front axle alone"), Qt::AlignHCenter);
    sketch.paper(QRectF(112, 4, 46, 48), tr("its ticket"),
                 {{tr("front axle"), 'A'}, {tr("rear axle"), 'B'}, {tr("whole car"), 'C'}});
}

void drawFourScales(HowToSketch& sketch) {
    drawCar(sketch, {32, 26});
    sketch.box(QRectF(20, 34, 24, 5));
    sketch.box(QRectF(66, 34, 24, 5));
    sketch.ground(4, 106, 40);
    sketch.arrow({44, 47}, {24, 47});
    sketch.arrow({60, 47}, {80, 47});
    sketch.say({52, 54}, tr("off and on again, a few times"), Qt::AlignHCenter);
    sketch.say({134, 8}, tr("what one pad read"), Qt::AlignHCenter);
    sketch.line({112, 32}, {156, 32});
    for (const double x : {124.0, 128.0, 130.0, 133.0, 142.0}) {
        sketch.circle({x, 28}, 1.3);
    }
    sketch.dashed({124, 28}, {124, 44});
    sketch.dashed({142, 28}, {142, 44});
    sketch.measure({124, 41}, {142, 41}, 'A');
}

void drawLift(HowToSketch& sketch) {
    sketch.ground(4, 156, 50);
    sketch.shape({{27, 34}, {24, 25}, {36, 19}, {42, 8}, {63, 3}, {78, 8}, {99, 6}, {104, 15}}, kPart);
    sketch.tire({40, 41}, 7);
    sketch.tire({87, 26}, 7);
    sketch.box(QRectF(80, 33, 14, 17));
    sketch.line({80, 33}, {94, 50}, kThin);
    sketch.line({94, 33}, {80, 50}, kThin);
    sketch.scale(QRectF(32, 48, 16, 3), {14, 40}, 'B');
    sketch.dashed({87, 33}, {120, 33});
    sketch.measure({116, 48}, {116, 33}, 'A');
    sketch.say({124, 42}, tr("raised by"));
    sketch.say({108, 12}, tr("a shop's ramps, stops"));
    sketch.say({108, 16}, tr("and restraints; nobody"));
    sketch.say({108, 20}, tr("under, before or behind"));
}

void drawCgHeight(HowToSketch& sketch) {
    drawCar(sketch, {48, 40});
    sketch.ground(14, 146, 47);
    const QPointF cg(74, 28);
    sketch.circle(cg, 2.6);
    sketch.cross(cg, 3.6);
    sketch.dashed(cg, {124, 28});
    sketch.measure({120, 47}, {120, 28}, 'A');
    sketch.say({128, 38}, tr("of all that is aboard"));
    sketch.say({80, 8}, tr("from the lift on the Weights page, or an estimate"), Qt::AlignHCenter);
}

void drawUnsprung(HowToSketch& sketch) {
    drawAxle(sketch, 14, 66, 42);
    sketch.scale(QRectF(6, 43, 68, 5), {88, 36}, 'A');
    sketch.say({44, 55}, tr("axle, wheels, brakes, half the links"), Qt::AlignHCenter);
    sketch.line({102, 4}, {102, 56}, kThin);
    sketch.tread({122, 28}, 10, 28);
    sketch.line({127, 28}, {136, 28}, 2.4);
    sketch.box(QRectF(129, 21, 3, 14));
    sketch.scale(QRectF(112, 43, 28, 5), {148, 32}, 'B');
    sketch.say({130, 55}, tr("both front corners"), Qt::AlignHCenter);
}

void drawTireRate(HowToSketch& sketch) {
    sketch.circle({44, 24}, 17, kPart);
    sketch.circle({44, 24}, 10, kThin);
    sketch.cross({44, 24});
    sketch.arrow({44, 1}, {44, 6});
    sketch.scale(QRectF(26, 40, 36, 5), {12, 32}, 'A');
    sketch.ground(4, 90, 48);
    sketch.dashed({44, 24}, {78, 24});
    sketch.measure({74, 40}, {74, 24}, 'B');
    sketch.say({44, 55}, tr("at race pressure, twice"), Qt::AlignHCenter);
    sketch.axes(QRectF(104, 12, 46, 34), tr("pressed flatter"), tr("load"));
    sketch.line({110, 42}, {146, 16}, kHeavy);
    sketch.lines({{119, 35.6}, {137, 35.6}, {137, 22.6}}, kThin);
}

void drawPressure(HowToSketch& sketch) {
    sketch.tire({48, 29}, 24);
    sketch.circle({48, 29}, 14, kThin);
    sketch.line({58, 36}, {66, 40}, 1.4);
    sketch.lines({{66, 40}, {82, 44}, {98, 38}, {104, 30}}, 1.2);
    sketch.dial({112, 20}, 13, 130);
    sketch.letter({112, 27}, 'A');
    sketch.ground(14, 90, 53.5);
    sketch.say({128, 18}, tr("the gauge you use"));
    sketch.say({128, 22}, tr("at the track"));
}

void drawWheelRate(HowToSketch& sketch) {
    drawCar(sketch, {40, 40});
    sketch.ground(10, 116, 47);
    sketch.box(QRectF(82, 24, 12, 8), kPart, 1);
    sketch.letter({88, 16}, 'A');
    sketch.say({96, 17}, tr("known weights over both wheels"));
    sketch.dashed({102, 33}, {126, 33});
    sketch.dashed({102, 38}, {126, 38});
    sketch.arrow({122, 27}, {122, 33});
    sketch.arrow({122, 44}, {122, 38});
    sketch.letter({129, 35.5}, 'B');
    sketch.say({137, 36.5}, tr("comes down"));
    sketch.say({80, 55}, tr("half of A over B, the tires' own squeeze left out"), Qt::AlignHCenter);
}

void drawRollRate(HowToSketch& sketch) {
    drawAxle(sketch, 30, 90, 50);
    sketch.ground(14, 106, 50);
    sketch.shape({{27, 22}, {91, 10}, {92, 14}, {28, 26}});
    sketch.coil({46, 34}, {45, 22}, 4, 3);
    sketch.coil({74, 34}, {74, 16}, 4, 3);
    sketch.dashed({60, 18}, {124, 18});
    sketch.angle({60, 18}, 46, 0, 10.6, 'B');
    sketch.lines({{40, 10}, {48, 5}, {58, 3}, {68, 4}}, 0.35);
    sketch.arrow({46, 6}, {40, 10});
    sketch.letter({58, 8}, 'A');
    sketch.say({112, 34}, tr("A: torque for each degree of B"));
    sketch.say({112, 39}, tr("body over the axle,"));
    sketch.say({112, 43}, tr("tires left out"));
}

void drawSideLoads(HowToSketch& sketch) {
    drawAxle(sketch, 44, 116, 40);
    sketch.ground(20, 140, 40);
    sketch.say({80, 6}, tr("rear axle from behind, in the launch"), Qt::AlignHCenter);
    sketch.arrow({44, 56}, {44, 41});
    sketch.arrow({116, 49}, {116, 41});
    sketch.dashed({30, 49}, {130, 49});
    sketch.lines({{40, 49}, {38, 49}, {38, 56}, {40, 56}}, 0.35);
    sketch.letter({31, 52.5}, 'A');
    sketch.say({74, 55.5}, tr("half of the load"));
}

void drawTape(HowToSketch& sketch) {
    for (const auto& [y, end] : {std::pair(12.0, 118.0), std::pair(30.0, 124.0)}) {
        sketch.box(QRectF(14, y - 4, 14, 8), kPart, 2);
        sketch.box(QRectF(28, y - 1.4, 110, 2.8), kThin);
        for (int mark = 0; mark < 27; ++mark) {
            sketch.line({30 + 4.0 * mark, y - 1.4}, {30 + 4.0 * mark, y + (mark % 4 == 0 ? 1.2 : 0)}, kThin);
        }
        sketch.line({end, y - 5}, {end, y + 5}, kHeavy);
    }
    sketch.dashed({118, 17}, {118, 48});
    sketch.dashed({124, 35}, {124, 48});
    sketch.arrow({110, 45}, {118, 45});
    sketch.arrow({132, 45}, {124, 45});
    sketch.letter({121, 51}, 'A');
    sketch.say({106, 54}, tr("the same length read again, from fresh marks"), Qt::AlignRight);
    sketch.say({142, 13}, tr("1st"));
    sketch.say({142, 31}, tr("2nd"));
}

void drawCalipers(HowToSketch& sketch) {
    sketch.box(QRectF(20, 10, 96, 6));
    sketch.shape({{24, 16}, {32, 16}, {32, 40}, {28, 40}});
    sketch.shape({{70, 16}, {78, 16}, {74, 40}, {70, 40}});
    sketch.box(QRectF(66, 8, 26, 10), kPart, 1);
    sketch.circle({51, 32}, 19);
    sketch.circle({51, 32}, 4, kThin);
    sketch.letter({79, 13}, 'A');
    sketch.say({100, 34}, tr("over a bolt and back to the hole's center,"));
    sketch.say({100, 38}, tr("a few times: how far the readings scatter"));
}

void drawAngleFinder(HowToSketch& sketch) {
    for (const double x : {42.0, 118.0}) {
        sketch.box(QRectF(x - 22, 34, 44, 5));
        sketch.box(QRectF(x - 12, 30, 24, 4), kPart, 0.5);
        sketch.dial({x, 20}, 10, x < 80 ? 84 : 96);
    }
    sketch.arrow({70, 16}, {90, 16});
    sketch.lines({{72, 30}, {80, 34}, {88, 30}}, 0.35);
    sketch.letter({80, 24}, 'A');
    sketch.say({80, 48}, tr("read, turned end for end on the same face, read again"), Qt::AlignHCenter);
}

void drawFloor(HowToSketch& sketch) {
    sketch.tire({36, 26}, 14);
    sketch.lines({{10, 40}, {54, 40}, {90, 42}, {150, 46}}, 0.7);
    sketch.box(QRectF(22, 38, 112, 2), kThin);
    sketch.box(QRectF(76, 34, 22, 4), kPart, 0.6);
    sketch.circle({87, 36}, 1.1, kThin);
    sketch.say({87, 31}, tr("straightedge and level from the tires' patches"), Qt::AlignHCenter);
    sketch.arrow({126, 32}, {126, 40});
    sketch.arrow({126, 53}, {126, 45});
    sketch.letter({133, 51}, 'A');
    sketch.say({122, 55}, tr("floor, where heights are taped"), Qt::AlignRight);
}

void drawCenterPlane(HowToSketch& sketch) {
    for (const double x : {34.0, 126.0}) {
        sketch.tread({x, 12}, 18, 7);
        sketch.tread({x, 46}, 18, 7);
        sketch.line({x, 15.5}, {x, 42.5});
    }
    sketch.dashed({14, 31}, {146, 31});
    sketch.line({20, 29}, {140, 29}, kThin);
    sketch.measure({70, 15}, {70, 29}, '1');
    sketch.measure({70, 43}, {70, 29}, '2');
    sketch.arrow({100, 22}, {100, 29});
    sketch.arrow({100, 38}, {100, 31});
    sketch.letter({107, 24}, 'A');
    sketch.say({74, 54}, tr("from above: 1 and 2 alike on the true middle"), Qt::AlignHCenter);
    sketch.say({144, 36}, tr("chalked line"), Qt::AlignRight);
}

void drawAxleLine(HowToSketch& sketch) {
    sketch.say({50, 6}, tr("from the side"), Qt::AlignHCenter);
    sketch.tire({50, 26}, 17);
    sketch.ground(14, 100, 43);
    sketch.dashed({50, 26}, {50, 41});
    sketch.shape({{48.4, 38}, {51.6, 38}, {50, 42.4}}, kThin);
    sketch.line({56, 43}, {56, 50}, kHeavy);
    sketch.arrow({42, 48}, {50, 48});
    sketch.arrow({64, 48}, {56, 48});
    sketch.letter({53, 54}, 'A');
    sketch.dashed({50, 43}, {50, 51});
    sketch.say({66, 54}, tr("line on the floor"));
    sketch.say({72, 22}, tr("plumb line from both ends of the axle"));
}

}  // namespace bolthole
