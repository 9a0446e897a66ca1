// How links and driveshaft are measured.
#include "widgets/kit/translation.h"
#include "widgets/papers/howto/how_to_drawings.h"

namespace bolthole {

namespace {

using how_to_line::kHeavy;
using how_to_line::kThin;

/// A tube with a rod end at both ends, eye to eye, so much thread showing.
void drawRod(HowToSketch& sketch, double left, double right, double y, double showing) {
    const double tubeLeft = left + 6 + showing;
    const double tubeRight = right - 6 - showing;
    sketch.line({left, y}, {right, y}, 1.6);
    sketch.box(QRectF(QPointF(tubeLeft, y - 2.2), QPointF(tubeRight, y + 2.2)));
    for (const double x : {left, right}) {
        sketch.circle({x, y}, 3);
        sketch.circle({x, y}, 1.1, kThin);
        sketch.cross({x, y}, 1.6);
    }
    for (double x = left + 5; x < tubeLeft - 0.4; x += 1.2) {
        sketch.line({x, y - 1.1}, {x + 0.5, y + 1.1}, kThin);
        sketch.line({left + right - x, y - 1.1}, {left + right - x - 0.5, y + 1.1}, kThin);
    }
}

/// A joint's yoke at the end of a shaft that comes from `from`.
void drawShaftTo(HowToSketch& sketch, QPointF from, QPointF joint, double thick) {
    sketch.line(from, joint, thick);
    sketch.circle(joint, 2.6);
    sketch.cross(joint, 1.8);
}

}  // namespace

void drawPointPlaces(HowToSketch& sketch) {
    const QPointF axle(30, 30);
    const QPointF hole(74, 25);
    sketch.tire(axle, 17);
    sketch.ground(6, 98, 47);
    sketch.circle(hole, 1.4);
    sketch.dashed(axle, {30, 54});
    sketch.dashed(hole, {74, 54});
    sketch.dashed(hole, {90, 25});
    sketch.measure({30, 52.5}, {74, 52.5}, 'A');
    sketch.measure({87, 47}, {87, 25}, 'B');
    sketch.say({64, 20}, tr("its place"));
    sketch.say({98, 4}, tr("front of the car →"), Qt::AlignRight, true);
    sketch.line({103, 2}, {103, 56}, kThin);
    sketch.say({131, 4}, tr("seen from behind"), Qt::AlignHCenter, true);
    sketch.tread({111, 30}, 8, 34);
    sketch.tread({151, 30}, 8, 34);
    sketch.line({115, 30}, {147, 30}, 1);
    sketch.ground(105, 157, 47);
    sketch.circle({119, 25}, 1.4);
    sketch.dashed({131, 8}, {131, 55});
    sketch.dashed({119, 25}, {119, 55});
    sketch.measure({119, 52.5}, {131, 52.5}, 'C');
}

void drawRodLengths(HowToSketch& sketch) {
    drawRod(sketch, 40, 120, 9, 4);
    sketch.dashed({40, 9}, {40, 19});
    sketch.dashed({120, 9}, {120, 19});
    sketch.measure({40, 17}, {120, 17}, 'A');
    sketch.say({124, 18}, tr("as built"));
    drawRod(sketch, 12, 72, 32, 0.6);
    sketch.dashed({12, 32}, {12, 43});
    sketch.dashed({72, 32}, {72, 43});
    sketch.measure({12, 41}, {72, 41}, 'B');
    sketch.say({42, 50}, tr("both ends screwed in"), Qt::AlignHCenter);
    drawRod(sketch, 84, 154, 32, 7);
    sketch.dashed({84, 32}, {84, 43});
    sketch.dashed({154, 32}, {154, 43});
    sketch.measure({84, 41}, {154, 41}, 'C');
    sketch.say({119, 50}, tr("out as far as they may"), Qt::AlignHCenter);
    sketch.say({4, 10}, tr("bolt center"));
    sketch.say({4, 13.6}, tr("to bolt center"));
}

void drawRodThread(HowToSketch& sketch) {
    constexpr double kY = 22;
    sketch.box(QRectF(14, kY - 6, 60, 12));
    sketch.box(QRectF(74, kY - 5.5, 5, 11));
    sketch.line({40, kY - 3}, {98, kY - 3});
    sketch.line({40, kY + 3}, {98, kY + 3});
    sketch.line({40, kY - 3}, {40, kY + 3});
    for (double x = 42; x < 97; x += 2) {
        sketch.line({x, kY - 3}, {x + 0.9, kY + 3}, kThin);
    }
    sketch.circle({105, kY}, 8);
    sketch.circle({105, kY}, 3);
    sketch.dashed({40, kY}, {40, 40});
    sketch.dashed({74, kY}, {74, 40});
    sketch.measure({40, 38}, {74, 38}, 'A');
    sketch.say({57, 48}, tr("thread that the tube holds"), Qt::AlignHCenter);
    sketch.say({76.5, 11}, tr("jam nut"), Qt::AlignHCenter);
    sketch.letter({24, kY}, 'C');
    sketch.say({4, 52.5}, tr("C: threaded at both ends, left and right hand, or at one"));
    sketch.line({88, kY + 4}, {122, 42}, kThin);
    sketch.box(QRectF(122, 32, 34, 7));
    for (int mark = 0; mark < 16; ++mark) {
        sketch.line({124 + 2.0 * mark, 39}, {124 + 2.0 * mark, mark % 4 == 0 ? 35.5 : 37}, kThin);
        sketch.line({124 + 2.0 * mark, 40}, {125 + 2.0 * mark, 44}, kThin);
    }
    sketch.line({122, 40}, {156, 40}, kThin);
    sketch.letter({139, 27}, 'B');
    sketch.say({139, 50}, tr("threads in 1 in"), Qt::AlignHCenter);
}

void drawRodEndLean(HowToSketch& sketch) {
    const QPointF ball(44, 32);
    sketch.box(QRectF(30, 19, 28, 4));
    sketch.box(QRectF(30, 41, 28, 4));
    sketch.line({44, 13}, {44, 51}, 1.6);
    sketch.say({44, 10}, tr("bracket and bolt, from above"), Qt::AlignHCenter);
    sketch.line({49, 30}, {116, 30}, kThin);
    sketch.line({49, 34}, {116, 34}, kThin);
    sketch.shape({{47.6, 27.2}, {118, 5.6}, {119.2, 9.4}, {49, 31}});
    sketch.circle(ball, 5.4);
    sketch.cross(ball);
    sketch.dashed(ball, {130, 32});
    sketch.dashed(ball, {126, 6.9});
    sketch.angle(ball, 56, 0, 17, 'A');
    sketch.say({134, 33}, tr("straight"));
    sketch.say({130, 8}, tr("body touching"));
}

void drawRating(HowToSketch& sketch) {
    drawRod(sketch, 12, 72, 26, 3);
    sketch.arrow({14, 36}, {2, 36});
    sketch.arrow({70, 36}, {82, 36});
    sketch.say({42, 46}, tr("the weakest part of all decides"), Qt::AlignHCenter);
    sketch.paper(
        QRectF(92, 6, 60, 46), tr("manufacturer's sheet"),
        {{tr("rod end, this size"), kNoLetter}, {tr("static rating"), 'A'}, {tr("for this use"), kNoLetter}});
}

void drawJointAngle(HowToSketch& sketch) {
    const QPointF joint(52, 36);
    drawShaftTo(sketch, {132, 16}, joint, 2);
    sketch.shape({{12, 31}, {38, 34}, {38, 40}, {12, 45}});
    sketch.line({38, 37}, joint, 2);
    sketch.circle(joint, 2.6);
    sketch.cross(joint, 1.8);
    sketch.dashed({20, 37.8}, {126, 33.4});
    sketch.angle(joint, 50, 2.4, 14, 'A');
    sketch.say({134, 17}, tr("shaft"));
    sketch.say({25, 51}, tr("pinion, at rest"), Qt::AlignHCenter);
    sketch.dashed({14, 44}, {66, 10});
    sketch.angle({25, 38}, 26, 2, 33, 'B');
    sketch.say({68, 9}, tr("its nose under full power"));
    sketch.say({156, 54}, tr("A: manufacturer's table, for the shaft's speed"), Qt::AlignRight);
}

void drawYokePhase(HowToSketch& sketch) {
    for (const double x : {42.0, 118.0}) {
        sketch.circle({x, 30}, 14);
        sketch.circle({x, 30}, 3, kThin);
    }
    sketch.line({22, 30}, {62, 30}, 3);
    sketch.box(QRectF(33, 20.5, 18, 5), how_to_line::kPart, 0.5);
    sketch.say({42, 51}, tr("front yoke: turned until level"), Qt::AlignHCenter);
    sketch.say({42, 10}, tr("seen from behind"), Qt::AlignHCenter);
    sketch.line({99.6, 36.4}, {136.4, 23.6}, 3);
    sketch.dashed({94, 30}, {148, 30});
    sketch.angle({118, 30}, 24, 0, 19, 'A');
    sketch.say({118, 51}, tr("rear yoke of the same shaft"), Qt::AlignHCenter);
    sketch.arrow({68, 30}, {88, 30});
}

void drawSlipYoke(HowToSketch& sketch) {
    constexpr double kY = 24;
    sketch.shape({{78, 12}, {150, 8}, {150, 40}, {78, 36}});
    sketch.say({114, 6}, tr("transmission's tail"), Qt::AlignHCenter);
    sketch.line({64, kY}, {122, kY}, 5);
    sketch.box(QRectF(92, kY - 1.6, 46, 3.2), kThin);
    for (double x = 94; x < 136; x += 3) {
        sketch.line({x, kY - 1.6}, {x, kY + 1.6}, kThin);
    }
    sketch.circle({58, kY}, 4);
    sketch.cross({58, kY}, 2.4);
    sketch.line({8, 30}, {54, kY + 0.5}, 2);
    sketch.say({16, 24}, tr("driveshaft"));
    sketch.dashed({92, kY}, {92, 49});
    sketch.dashed({122, kY}, {122, 49});
    sketch.measure({92, 46}, {122, 46}, 'A');
    sketch.say({107, 55}, tr("spline held"), Qt::AlignHCenter);
    sketch.dashed({66, kY}, {66, 49});
    sketch.dashed({78, 36}, {78, 49});
    sketch.measure({66, 46}, {78, 46}, 'B');
    sketch.say({72, 55}, tr("in, to bottom"), Qt::AlignHCenter);
    sketch.paper(QRectF(6, 36, 46, 20), tr("manufacturer"), {{tr("least spline held"), 'C'}});
}

void drawGearTurns(HowToSketch& sketch) {
    sketch.shape({{44, 16}, {92, 12}, {92, 44}, {44, 40}});
    sketch.say({68, 29}, tr("transmission"), Qt::AlignHCenter);
    sketch.line({14, 28}, {44, 28}, 3);
    sketch.line({92, 28}, {124, 28}, 3);
    sketch.angle({26, 28}, 8, -60, 240, 'A');
    sketch.say({26, 48}, tr("turns of the engine"), Qt::AlignHCenter);
    sketch.turn({112, 28}, 8, 240, -60);
    sketch.say({116, 48}, tr("one turn of the shaft"), Qt::AlignHCenter);
    sketch.say({4, 55.5}, tr("front of the car ←"), Qt::AlignLeft, true);
    sketch.say({156, 55.5}, tr("or the transmission's data: ratio of that gear"), Qt::AlignRight);
}

void drawAxleTurns(HowToSketch& sketch) {
    sketch.circle({54, 32}, 12);
    for (const double y : {28.0, 36.0}) {
        sketch.line({22, y}, {42.5, y});
        sketch.line({65.5, y}, {86, y});
    }
    sketch.tread({16, 32}, 11, 34);
    sketch.tread({92, 32}, 11, 34);
    sketch.line({54, 20}, {54, 8}, 3);
    sketch.turn({54, 13}, 6, -50, 230);
    sketch.letter({68, 9}, 'A');
    sketch.say({75, 10}, tr("turns of the yoke"));
    sketch.say({54, 55.5}, tr("for one turn of both wheels, marked with chalk"), Qt::AlignHCenter);
    sketch.box(QRectF(112, 20, 42, 22), how_to_line::kPart, 1.5);
    sketch.circle({117, 31}, 1.2, kThin);
    sketch.say({121, 28}, tr("tag on the cover"));
    sketch.say({121, 36}, QStringLiteral("41 : 10"), Qt::AlignLeft, true);
    sketch.say({133, 48}, tr("ring gear over pinion"), Qt::AlignHCenter);
}

void drawPlate(HowToSketch& sketch) {
    sketch.shape({{36, 12}, {84, 6}, {104, 20}, {104, 46}, {36, 46}});
    for (const QPointF& hole : {QPointF(58, 32), QPointF(84, 32)}) {
        sketch.circle(hole, 4.6);
        sketch.cross(hole, 6);
    }
    sketch.dashed({58, 32}, {58, 18});
    sketch.dashed({84, 32}, {84, 18});
    sketch.measure({58, 20}, {84, 20}, 'C');
    sketch.measure({84, 32}, {104, 32}, 'B');
    sketch.arrow({45, 37}, {54, 34});
    sketch.letter({43, 38}, 'A');
    sketch.circle({36, 46}, 1.3, kHeavy);
    sketch.dashed({36, 46}, {36, 56});
    sketch.dashed({58, 36}, {58, 56});
    sketch.measure({36, 53.5}, {58, 53.5}, 'D');
    sketch.dashed({58, 32}, {22, 32});
    sketch.dashed({36, 46}, {22, 46});
    sketch.measure({25, 32}, {25, 46}, 'E');
    sketch.say({33, 52}, tr("corner"), Qt::AlignRight);
    sketch.say({110, 10}, tr("plate, from its side"), Qt::AlignLeft, true);
    sketch.say({110, 22}, tr("A: calipers across the hole"));
    sketch.say({110, 27}, tr("B, C: the least you allow,"));
    sketch.say({110, 31}, tr("from centers"));
    sketch.say({110, 40}, tr("D, E: from the hole you chose,"));
    sketch.say({110, 44}, tr("forward and up"));
}

}  // namespace bolthole
