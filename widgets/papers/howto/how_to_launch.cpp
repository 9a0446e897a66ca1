// How engine, launch and brakes are measured, or read off a sheet.
#include <array>
#include <cmath>
#include <utility>

#include "widgets/kit/translation.h"
#include "widgets/papers/howto/how_to_drawings.h"

namespace bolthole {

namespace {

using how_to_line::kHeavy;
using how_to_line::kPart;
using how_to_line::kThin;

}  // namespace

void drawTorqueSheet(HowToSketch& sketch) {
    sketch.box(QRectF(14, 3, 92, 52));
    sketch.say({18, 9}, tr("dyno sheet"), Qt::AlignLeft, true);
    sketch.axes(QRectF(24, 17, 74, 30), tr("rpm"), tr("torque"));
    QPolygonF curve;
    for (int at = 0; at <= 20; ++at) {
        const double x = at / 20.0;
        curve << QPointF(28 + 66 * x, 45 - 26 * std::sin(0.5 + 2.0 * x));
    }
    sketch.lines(curve, 0.9);
    sketch.dashed({63, 19}, {63, 47});
    sketch.letter({70, 25}, 'A');
    sketch.say({112, 24}, tr("at the flywheel, at the rpm"));
    sketch.say({112, 28}, tr("it launches at"));
    sketch.say({112, 36}, tr("measured at the wheels:"));
    sketch.say({112, 40}, tr("losses are in it already"));
}

void drawEngineLog(HowToSketch& sketch) {
    sketch.axes(QRectF(16, 8, 128, 42), tr("time"), tr("engine speed, data log"));
    sketch.lines({{20, 40},
                  {34, 40},
                  {40, 32},
                  {58, 32},
                  {64, 24},
                  {74, 22},
                  {92, 14},
                  {108, 12},
                  {110, 15},
                  {112, 12},
                  {114, 15},
                  {116, 12},
                  {120, 26},
                  {140, 18}},
                 0.9);
    sketch.dashed({58, 8}, {58, 50});
    sketch.say({58, 7}, tr("release"), Qt::AlignHCenter);
    sketch.letter({48, 38}, 'A');
    sketch.say({36, 46}, tr("held"));
    sketch.dashed({64, 24}, {84, 24});
    sketch.letter({70, 29}, 'B');
    sketch.say({77, 32}, tr("stall"));
    sketch.dashed({100, 12}, {140, 12});
    sketch.letter({135, 8}, 'C');
    sketch.say({142, 6}, tr("limiter"));
    sketch.letter({100, 20}, 'D');
    sketch.say({92, 29}, tr("highest in the gear"));
}

void drawLogger(HowToSketch& sketch) {
    sketch.axes(QRectF(14, 8, 108, 42), tr("time"), tr("logger: forward pull in g"));
    sketch.line({14, 32}, {122, 32}, kThin);
    QPolygonF raw;
    QPolygonF smooth;
    for (int at = 0; at <= 100; ++at) {
        const double x = at / 100.0;
        const double g = x < 0.1   ? 0
                         : x < 0.6 ? 18 * std::exp(-3 * (x - 0.1)) * (1 - std::exp(-40 * (x - 0.1)))
                         : x < 0.7 ? 4
                                   : -13 * (1 - std::exp(-30 * (x - 0.7)));
        smooth << QPointF(14 + 106 * x, 32 - g);
        raw << QPointF(14 + 106 * x, 32 - g - 1.3 * std::sin(2.4 * at));
    }
    sketch.lines(raw, kThin);
    sketch.lines(smooth, 0.9);
    sketch.letter({46, 13}, 'A');
    sketch.say({53, 14}, tr("launch: the smoothed peak"));
    sketch.letter({82, 43}, 'B');
    sketch.say({75, 44}, tr("braking"), Qt::AlignRight);
    sketch.say({126, 22}, tr("on a closed"));
    sketch.say({126, 26}, tr("course only"));
}

void drawTimeSlip(HowToSketch& sketch) {
    sketch.box(QRectF(4, 1, 70, 56));
    sketch.say({7, 6.4}, tr("time slip"), Qt::AlignLeft, true);
    sketch.say({64, 6.4}, tr("speed"), Qt::AlignHCenter);
    sketch.line({7, 8.4}, {71, 8.4}, kThin);
    const std::array rows{std::pair(tr("60 ft"), 'A'), std::pair(tr("330 ft"), 'B'),
                          std::pair(tr("1/8 mile"), 'C'), std::pair(tr("1/4 mile"), 'D')};
    for (std::size_t at = 0; at < rows.size(); ++at) {
        const double y = 15.5 + 12.0 * static_cast<double>(at);
        sketch.say({7, y + 1}, rows[at].first);
        sketch.letter({42, y}, rows[at].second);
        if (at >= 2) {
            sketch.letter({64, y}, at == 2 ? 'E' : 'F');
        }
    }
    sketch.ground(84, 156, 34);
    sketch.tire({94, 26}, 8);
    sketch.dashed({102, 12}, {102, 34});
    sketch.dashed({150, 12}, {150, 34});
    sketch.say({102, 10}, tr("start"), Qt::AlignHCenter);
    sketch.say({150, 10}, tr("60 ft"), Qt::AlignHCenter);
    sketch.arrow({108, 26}, {146, 26});
    sketch.say({118, 44}, tr("the clock starts once the tire"), Qt::AlignHCenter);
    sketch.say({118, 48}, tr("has left the beam"), Qt::AlignHCenter);
}

void drawWeather(HowToSketch& sketch) {
    sketch.lines({{8, 10}, {44, 4}, {48, 10}}, kHeavy);
    sketch.box(QRectF(24, 14, 5, 26), kPart, 2.5);
    sketch.circle({26.5, 42}, 4.4);
    sketch.line({26.5, 40}, {26.5, 26}, 1.6);
    sketch.letter({38, 28}, 'A');
    sketch.say({27, 54}, tr("in the shade, chest high"), Qt::AlignHCenter);
    sketch.dial({72, 24}, 11, 100);
    sketch.letter({72, 41}, 'B');
    sketch.say({72, 54}, tr("barometer, at the place"), Qt::AlignHCenter);
    sketch.dial({106, 24}, 11, 60);
    sketch.letter({106, 41}, 'C');
    sketch.say({106, 10}, tr("humidity"), Qt::AlignHCenter);
    sketch.ground(120, 158, 46);
    sketch.shape({{128, 8}, {146, 8}, {146, 14}, {138, 14}, {136, 22}, {131, 22}});
    sketch.dashed({128, 11}, {124, 46});
    sketch.letter({142, 38}, 'D');
    sketch.say({138, 52}, tr("rear tires' track,"), Qt::AlignHCenter);
    sketch.say({138, 56}, tr("just before the pass"), Qt::AlignHCenter);
}

void drawRollout(HowToSketch& sketch) {
    sketch.ground(14, 146, 46);
    sketch.tire({64, 28}, 18);
    sketch.circle({92, 28}, 18, kThin);
    sketch.circle({78, 42}, 1.2, kHeavy);
    sketch.say({78, 55}, tr("the beam, from the side"), Qt::AlignHCenter);
    sketch.line({78, 43.5}, {78, 51}, kThin);
    sketch.dashed({64, 28}, {64, 4});
    sketch.dashed({92, 28}, {92, 4});
    sketch.measure({64, 6}, {92, 6}, 'A');
    sketch.say({60, 7}, tr("second bulb lights"), Qt::AlignRight);
    sketch.say({96, 7}, tr("goes out"));
    sketch.arrow({116, 28}, {134, 28});
    sketch.say({114, 36}, tr("rolled by hand,"));
    sketch.say({114, 40}, tr("engine off"));
}

void drawConverter(HowToSketch& sketch) {
    sketch.axes(QRectF(24, 10, 86, 38), tr("turbine over engine speed"), tr("torque out over torque in"));
    sketch.lines({{24, 14}, {92, 40}, {108, 40}}, 0.9);
    sketch.letter({31, 22}, 'A');
    sketch.say({40, 17}, tr("at stall"));
    sketch.dashed({92, 40}, {92, 48});
    sketch.letter({92, 33}, 'B');
    sketch.say({99, 34}, tr("multiplies no more"));
    sketch.say({18, 41}, QStringLiteral("1"), Qt::AlignHCenter);
    sketch.say({118, 12}, tr("as its manufacturer's"));
    sketch.say({118, 16}, tr("sheet has it"));
}

void drawClutch(HowToSketch& sketch) {
    for (const double x : {34.0, 42.0, 50.0}) {
        sketch.box(QRectF(x, 10, 5, 36), kPart, 0.8);
    }
    sketch.line({14, 28}, {34, 28}, 3);
    sketch.line({55, 28}, {78, 28}, 3);
    sketch.arrow({26, 14}, {33, 14});
    sketch.arrow({62, 14}, {56, 14});
    sketch.say({44, 54}, tr("pressed together by its springs"), Qt::AlignHCenter);
    sketch.paper(QRectF(92, 8, 60, 40), tr("manufacturer's sheet"),
                 {{tr("spring load"), kNoLetter}, {tr("torque it carries"), 'A'}});
}

void drawEfficiency(HowToSketch& sketch) {
    sketch.circle({26, 26}, 11);
    sketch.say({26, 44}, tr("flywheel: 100 %"), Qt::AlignHCenter);
    sketch.line({37, 26}, {54, 26}, 5);
    sketch.shape({{54, 18}, {76, 18}, {76, 34}, {54, 34}});
    sketch.say({65, 44}, tr("gears"), Qt::AlignHCenter);
    sketch.line({76, 26}, {96, 26}, 4);
    sketch.circle({103, 26}, 7);
    sketch.say({103, 44}, tr("axle"), Qt::AlignHCenter);
    sketch.line({110, 26}, {124, 26}, 3);
    sketch.tire({136, 26}, 13);
    sketch.letter({136, 26}, 'A');
    sketch.arrow({66, 16}, {66, 8});
    sketch.arrow({103, 17}, {103, 8});
    sketch.say({84, 6}, tr("heat"), Qt::AlignHCenter);
    sketch.say({80, 54}, tr("A: what reaches the tires, from a dyno at both ends"), Qt::AlignHCenter);
}

void drawFriction(HowToSketch& sketch) {
    sketch.tire({52, 25}, 19);
    sketch.ground(10, 106, 44);
    sketch.arrow({30, 2}, {30, 16});
    sketch.say({4, 8}, tr("load on it"));
    sketch.arrow({56, 48}, {90, 48});
    sketch.say({70, 55}, tr("the most it pushes"), Qt::AlignHCenter);
    sketch.letter({124, 25}, 'A');
    sketch.say({132, 23}, tr("push"));
    sketch.line({131, 25}, {144, 25}, kThin);
    sketch.say({132, 29}, tr("load"));
    sketch.say({110, 44}, tr("best pass: its pull in g"));
    sketch.say({110, 48}, tr("× weight, over the rear's load"));
}

void drawTireSlip(HowToSketch& sketch) {
    sketch.axes(QRectF(24, 8, 104, 40), tr("slip: how much faster the tread runs"), tr("thrust"));
    QPolygonF curve;
    for (int at = 0; at <= 60; ++at) {
        const double slip = at / 60.0;
        const double rise =
            slip < 0.2 ? std::sin(slip / 0.2 * 1.5708) : 0.72 + 0.28 * std::exp(-5 * (slip - 0.2));
        curve << QPointF(24 + 100 * slip, 48 - 34 * rise);
    }
    sketch.lines(curve, 0.9);
    sketch.dashed({44, 14}, {44, 48});
    sketch.letter({44, 42}, 'A');
    sketch.dashed({118, 23}, {118, 48});
    sketch.letter({118, 36}, 'B');
    sketch.say({127, 22}, tr("left when sliding"));
    sketch.say({52, 12}, tr("pushes most"));
}

void drawTireRolled(HowToSketch& sketch) {
    sketch.tire({28, 30}, 15);
    sketch.ground(6, 62, 45);
    sketch.arrow({46, 30}, {58, 30});
    sketch.axes(QRectF(76, 10, 72, 36), tr("way rolled"), tr("tread wound up"));
    QPolygonF curve;
    for (int at = 0; at <= 40; ++at) {
        const double x = at / 40.0;
        curve << QPointF(76 + 70 * x, 46 - 32 * (1 - std::exp(-4 * x)));
    }
    sketch.lines(curve, 0.9);
    sketch.dashed({76, 25.8}, {93.5, 25.8});
    sketch.dashed({93.5, 25.8}, {93.5, 53});
    sketch.dashed({76, 46}, {76, 53});
    sketch.measure({76, 51}, {93.5, 51}, 'A');
    sketch.say({97, 27}, tr("two thirds"));
}

void drawRelease(HowToSketch& sketch) {
    sketch.axes(QRectF(24, 8, 104, 40), tr("time"), tr("brake or clutch holds, data log"));
    sketch.lines({{24, 14}, {60, 14}, {66, 18}, {78, 38}, {86, 46}, {126, 46}}, 0.9);
    sketch.dashed({60, 8}, {60, 54});
    sketch.dashed({86, 8}, {86, 54});
    sketch.measure({60, 52}, {86, 52}, 'A');
    sketch.say({56, 20}, tr("button or pedal"), Qt::AlignRight);
    sketch.say({90, 20}, tr("all let go"));
}

void drawSwing(HowToSketch& sketch) {
    sketch.line({20, 4}, {92, 4}, kHeavy);
    for (const double x : {34.0, 56.0, 78.0}) {
        sketch.line({x, 4}, {x, 36}, kThin);
    }
    sketch.shape({{30, 36}, {38, 32}, {74, 32}, {82, 36}, {74, 41}, {38, 41}});
    sketch.lines({{40, 47}, {50, 49.5}, {62, 49.5}, {72, 47}}, 0.35);
    sketch.arrow({64, 49.2}, {72, 47});
    sketch.arrow({48, 49.2}, {40, 47});
    sketch.say({56, 56}, tr("the part on three wires, twisting"), Qt::AlignHCenter);
    sketch.circle({118, 28}, 12);
    sketch.box(QRectF(115.5, 12, 5, 4));
    sketch.line({118, 28}, {123, 21}, kPart);
    sketch.letter({118, 33}, 'A');
    sketch.say({118, 47}, tr("time of ten swings, and its weight;"), Qt::AlignHCenter);
    sketch.say({118, 51}, tr("or the manufacturer's figure"), Qt::AlignHCenter);
}

void drawBodyPitch(HowToSketch& sketch) {
    sketch.shape({{26, 36}, {26, 25}, {38, 22}, {50, 12}, {76, 12}, {90, 22}, {114, 26}, {116, 36}});
    sketch.circle({72, 29}, 2.4);
    sketch.cross({72, 29}, 3.4);
    sketch.say({72, 43}, tr("the body's own center of gravity"), Qt::AlignHCenter);
    sketch.angle({72, 29}, 52, -14, 14, 'A');
    sketch.dashed({72, 29}, {128, 29});
    sketch.say({72, 53}, tr("a swing test of the bare body, or an estimate marked as one"), Qt::AlignHCenter);
}

void drawBrakeShare(HowToSketch& sketch) {
    sketch.tire({34, 22}, 15);
    sketch.circle({26, 40}, 4);
    sketch.circle({42, 40}, 4);
    sketch.tire({94, 22}, 15);
    sketch.circle({86, 40}, 4);
    sketch.circle({102, 40}, 4);
    sketch.say({34, 53}, tr("rear on rollers"), Qt::AlignHCenter);
    sketch.say({94, 53}, tr("front on rollers"), Qt::AlignHCenter);
    sketch.paper(QRectF(118, 6, 40, 42), tr("brake force"),
                 {{tr("front"), kNoLetter}, {tr("rear"), kNoLetter}, {tr("rear share"), 'A'}});
}

}  // namespace bolthole
