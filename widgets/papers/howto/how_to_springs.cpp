// How springs, shocks and travel are measured.
#include "widgets/kit/translation.h"
#include "widgets/papers/howto/how_to_drawings.h"

namespace bolthole {

namespace {

using how_to_line::kHeavy;
using how_to_line::kPart;
using how_to_line::kThin;

}  // namespace

void drawSpringTest(HowToSketch& sketch) {
    sketch.box(QRectF(38, 4, 4, 48));
    sketch.box(QRectF(78, 4, 4, 48));
    sketch.box(QRectF(36, 2, 48, 4));
    sketch.line({60, 6}, {60, 14}, 3);
    sketch.box(QRectF(46, 14, 28, 3));
    sketch.coil({60, 17}, {60, 44}, 8, 5);
    sketch.scale(QRectF(44, 44, 32, 5), {22, 40}, 'A');
    sketch.box(QRectF(34, 52, 52, 3));
    sketch.say({22, 33}, tr("force"), Qt::AlignHCenter);
    sketch.dashed({74, 14}, {104, 14});
    sketch.dashed({46, 23}, {104, 23});
    sketch.arrow({100, 6}, {100, 14});
    sketch.line({100, 14}, {100, 23}, 0.35);
    sketch.arrow({100, 31}, {100, 23});
    sketch.letter({107, 18.5}, 'B');
    sketch.say({112, 19.5}, tr("one more unit of length"));
    sketch.say({96, 42}, tr("rate: how much A grows for each B,"));
    sketch.say({96, 46}, tr("in the middle of the stroke;"));
    sketch.say({96, 50}, tr("or as printed on the spring"));
}

void drawSpringLengths(HowToSketch& sketch) {
    sketch.ground(8, 74, 48);
    sketch.coil({36, 48}, {36, 10}, 9, 6);
    sketch.dashed({36, 10}, {62, 10});
    sketch.measure({58, 48}, {58, 10}, 'A');
    sketch.say({36, 55}, tr("loose on the bench"), Qt::AlignHCenter);
    for (int turn = 0; turn < 7; ++turn) {
        sketch.box(QRectF(96, 45.2 - 2.8 * turn, 20, 2.8), kPart, 1.4);
    }
    sketch.ground(84, 152, 48);
    sketch.dashed({106, 28.4}, {138, 28.4});
    sketch.measure({134, 48}, {134, 28.4}, 'B');
    sketch.say({118, 55}, tr("wire thickness × coils"), Qt::AlignHCenter);
    sketch.say({118, 20}, tr("never squeeze one solid to find out"), Qt::AlignHCenter);
}

void drawShockLengths(HowToSketch& sketch) {
    sketch.shock({14, 10}, {92, 10});
    sketch.dashed({14, 10}, {14, 22});
    sketch.dashed({92, 10}, {92, 22});
    sketch.measure({14, 20}, {92, 20}, 'A');
    sketch.say({98, 11}, tr("pulled out as far as it goes"));
    sketch.shock({14, 34}, {58, 34});
    sketch.dashed({14, 34}, {14, 46});
    sketch.dashed({58, 34}, {58, 46});
    sketch.measure({14, 44}, {58, 44}, 'B');
    sketch.say({36, 54}, tr("pushed in until it bottoms"), Qt::AlignHCenter);
    sketch.shock({84, 34}, {148, 34});
    sketch.coil({96, 34}, {138, 34}, 5, 7);
    sketch.dashed({84, 34}, {84, 46});
    sketch.dashed({148, 34}, {148, 46});
    sketch.measure({84, 44}, {148, 44}, 'C');
    sketch.say({116, 54}, tr("coilover: the spring just stops pushing"), Qt::AlignHCenter);
}

void drawStopLengths(HowToSketch& sketch) {
    sketch.box(QRectF(22, 8, 36, 4));
    sketch.shape({{28, 12}, {52, 12}, {48, 30}, {44, 42}, {36, 42}, {32, 30}});
    sketch.dashed({40, 42}, {74, 42});
    sketch.measure({70, 12}, {70, 42}, 'A');
    sketch.say({40, 52}, tr("nothing pressing"), Qt::AlignHCenter);
    sketch.box(QRectF(98, 8, 36, 4));
    sketch.shape({{100, 12}, {132, 12}, {134, 18}, {132, 24}, {100, 24}, {98, 18}});
    sketch.box(QRectF(98, 24, 36, 3));
    sketch.arrow({116, 40}, {116, 28});
    sketch.dashed({132, 24}, {150, 24});
    sketch.measure({146, 12}, {146, 24}, 'B', {5, 0});
    sketch.say({116, 52}, tr("as far as its manufacturer lets it"), Qt::AlignHCenter);
}

void drawStrapLength(HowToSketch& sketch) {
    for (const double x : {30.0, 130.0}) {
        sketch.circle({x, 22}, 5);
    }
    sketch.box(QRectF(30, 19, 100, 6), kPart, 1);
    for (const double x : {30.0, 130.0}) {
        sketch.circle({x, 22}, 2);
        sketch.cross({x, 22});
        sketch.dashed({x, 22}, {x, 40});
    }
    sketch.measure({30, 38}, {130, 38}, 'A');
    sketch.say({80, 12}, tr("strap pulled straight"), Qt::AlignHCenter);
    sketch.say({80, 50}, tr("bolt to bolt"), Qt::AlignHCenter);
}

void drawGasForce(HowToSketch& sketch) {
    sketch.shock({62, 6}, {62, 44});
    sketch.arrow({62, 0}, {62, 3.6});
    sketch.scale(QRectF(42, 46, 40, 6), {112, 40}, 'A');
    sketch.ground(20, 140, 54);
    sketch.say({70, 20}, tr("held half in, at rest,"));
    sketch.say({70, 24}, tr("straight above the scale"));
    sketch.say({122, 41}, tr("bathroom scale"));
}

void drawClicks(HowToSketch& sketch) {
    sketch.shock({22, 30}, {104, 30});
    for (const double x : {14.0, 112.0}) {
        sketch.circle({x, 14}, 6);
        for (const QPointF& off : {QPointF(0, -6), QPointF(6, 0), QPointF(0, 6), QPointF(-6, 0)}) {
            sketch.line(QPointF(x, 14) + 0.75 * off, QPointF(x, 14) + off, kThin);
        }
    }
    sketch.line({16, 20}, {21, 28}, kThin);
    sketch.line({110, 20}, {105, 28}, kThin);
    sketch.letter({14, 14}, 'A');
    sketch.letter({112, 14}, 'B');
    sketch.say({24, 12}, tr("bump knob"));
    sketch.say({122, 12}, tr("rebound knob"));
    sketch.say({64, 42}, tr("which knob does what, and from which stop: its manufacturer's sheet"),
               Qt::AlignHCenter);
    sketch.say({64, 48}, tr("turn to that stop, then count the clicks back"), Qt::AlignHCenter);
}

void drawRearTravel(HowToSketch& sketch) {
    sketch.line({10, 6}, {110, 6}, kHeavy);
    sketch.say({12, 4}, tr("frame"));
    sketch.shape({{42, 6}, {52, 6}, {50, 14}, {44, 14}});
    sketch.box(QRectF(38, 26, 18, 3));
    sketch.circle({47, 33}, 4.6);
    sketch.cross({47, 33});
    sketch.dashed({50, 14}, {74, 14});
    sketch.dashed({56, 26}, {74, 26});
    sketch.measure({70, 14}, {70, 26}, 'A', {6, 0});
    sketch.say({84, 21}, tr("stop to pad, at ride height"));
    sketch.dashed({47, 33}, {100, 33});
    sketch.dashed({47, 49}, {100, 49});
    sketch.circle({47, 49}, 4.6, kThin);
    sketch.measure({92, 33}, {92, 49}, 'B');
    sketch.say({99, 42}, tr("down until shocks or straps are at their end"));
    sketch.shock({20, 8}, {24, 48});
}

void drawShockRatio(HowToSketch& sketch) {
    const QPointF pivot(104, 38);
    sketch.tread({36, 34}, 13, 32);
    sketch.line({42, 36}, pivot, 1.6);
    sketch.circle(pivot, 2);
    sketch.shape({{110, 6}, {126, 6}, {126, 50}, {110, 50}});
    sketch.say({130, 30}, tr("frame"));
    sketch.shock({92, 6}, {70, 36});
    sketch.dashed({36, 18}, {10, 18});
    sketch.dashed({36, 10}, {10, 10});
    sketch.line({14, 18}, {14, 10}, 0.35);
    sketch.arrow({14, 26}, {14, 18});
    sketch.arrow({14, 4}, {14, 10});
    sketch.letter({21, 14}, 'A');
    sketch.say({4, 55}, tr("the wheel rises a little"));
    sketch.letter({64, 20}, 'B');
    sketch.line({67, 21}, {78, 24}, kThin);
    sketch.say({50, 13}, tr("the shock shortens"));
    sketch.say({156, 55}, tr("the number: B over A, spring off"), Qt::AlignRight);
}

void drawSpringBase(HowToSketch& sketch) {
    sketch.tread({24, 32}, 13, 34);
    sketch.tread({136, 32}, 13, 34);
    sketch.line({30, 32}, {130, 32}, 2);
    sketch.circle({80, 32}, 6);
    sketch.ground(10, 150, 49);
    for (const double x : {52.0, 108.0}) {
        sketch.coil({x, 30}, {x, 12}, 5, 4);
        sketch.dashed({x, 30}, {x, 3});
    }
    sketch.measure({52, 6}, {108, 6}, 'A');
    sketch.say({80, 55}, tr("rear axle from behind, middle to middle"), Qt::AlignHCenter);
}

}  // namespace bolthole
