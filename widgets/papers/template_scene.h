// What a drilling template shows of a bracket, in mm as on the paper, and what it says of each hole.
#pragma once

#include <QPointF>
#include <QRectF>
#include <QString>
#include <QStringList>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/units/text.h"

namespace bolthole {

/// Names a bracket of a car's links.
struct BracketId {
    int link = 0;
    End end = End::chassis;

    bool operator==(const BracketId&) const = default;
};

/// The side of the car a face of the bracket is looked at from. From the left the car's front is at the left
/// of the paper, from the right at its right.
enum class TemplateFace { left, right };

/// What a template is made of. The link and the bracket's holes must be there.
struct TemplateRequest {
    Car car;
    BracketId place;
    NumberStyle style;

    [[nodiscard]] const Link& link() const { return car.links[static_cast<std::size_t>(place.link)]; }
    [[nodiscard]] const Bracket& bracket() const { return link().bracket(place.end); }
};

/// One hole.
struct TemplateHole {
    int number = 1;  ///< as the drawing and the key call it
    QString name;
    QPointF at;  ///< center, mm, x to the right and y down as the face is seen
    bool planned = false;
    bool inUse = false;
    bool hasEdge = false;
    QPointF edge;          ///< nearest point of the plate's edge, mm
    QString edgeWords;     ///< "13/16 in"
    int from = -1;         ///< index of the existing hole a planned one is measured from, or -1
    QString alongWords;    ///< how far forward or rearward of it, without direction
    QString upWords;       ///< how far up or down
    QStringList keyLines;  ///< all that is to be said of it; the first is its heading
};

/// One face of the bracket. All points in mm, x to the right, y down.
struct TemplateScene {
    TemplateFace face = TemplateFace::left;
    std::vector<QPointF> outline;  ///< empty: none was entered
    double diameter = 0;           ///< of the holes, mm; 0: not entered
    QString diameterWords;
    std::vector<TemplateHole> holes;
    QRectF content;       ///< all that is drawn, dimensions included
    QString acrossWords;  ///< of the outline's extent: "4 1/8 in"
    QString heightWords;
    QString bracketWords;  ///< "lower, axle bracket"
    QString faceWords;     ///< which face of which bracket one looks at
    QStringList notes;     ///< what has to be known before it is used
    QString starts;        ///< templateStarts(): what nobody measured; empty: nothing
};

[[nodiscard]] TemplateScene templateScene(const TemplateRequest& request, TemplateFace face);

/// "lower, axle bracket"
[[nodiscard]] QString bracketWords(const Car& car, const BracketId& place);

/// Which numbers of a plate nobody measured: "2 of 4 corners, edge distance". Empty: none.
[[nodiscard]] QString unmeasuredOfPlate(const Plate& plate);

/// What a template rests on that nobody measured, its bracket's plate and holes, and where a hole is only
/// planned, which the car's figures placed, the car's other numbers too: "Starting numbers, not measured:
/// plate of this bracket: 4 of 4 corners; lower middle hole". Empty: nothing. Lengths are not on it.
[[nodiscard]] QString templateStarts(const TemplateRequest& request);

/// A length on a template, with its unit: a fraction of an inch where it is one and the style shows them,
/// else to 0.001 in or 0.1 mm.
[[nodiscard]] QString templateLength(double metres, NumberStyle style);

/// Room left of and below the bracket for one dimension of a planned hole, mm.
inline constexpr double kDimensionStep = 7.5;

}  // namespace bolthole
