// What the views show and what they ask for. Views never change a car: they emit an Edit and are shown the
// result.
#pragma once

#include <Eigen/Core>
#include <QObject>
#include <QString>
#include <memory>
#include <optional>
#include <vector>

#include "geometry/car/faults.h"
#include "geometry/combinations/hole_combination.h"
#include "geometry/edits/edit.h"
#include "geometry/kinematics/trace.h"
#include "geometry/uncertainty/ic_cloud.h"
#include "geometry/uncertainty/trace_uncertainty.h"
#include "geometry/units/text.h"

namespace bolthole {

/// A point of the car that can be picked: a hole of a bracket, or a driveline joint (end: axle pinion,
/// chassis output).
struct PointId {
    enum class Kind { none, hole, joint };
    Kind kind = Kind::none;
    int link = -1;
    End end = End::chassis;
    int hole = -1;

    bool operator==(const PointId&) const = default;
};

/// Another car drawn as a ghost over the one on the bench.
struct Ghost {
    Car car;
    Trace trace;
    Station cursor;                  ///< at the bench's cursor travel; unusable where its links do not reach
    QString name;                    ///< what it is: "top / high"
    TraceUncertainty uncertainty{};  ///< the uncertainty of its figures
};

/// Everything the views draw. Owned by the window; views read it in place and keep no copy of the car.
struct BenchState {
    Car car;                        ///< as edited, faults included
    std::vector<Fault> faults;      ///< not empty: the car cannot be computed as it stands
    std::vector<Warning> warnings;  ///< computed when no drag is under way
    Car solvedCar;                  ///< the car `trace` belongs to: `car` unless that has faults
    Trace trace;
    bool traceIsCurrent = false;  ///< false: `trace` has no figures, `problem` says why
    std::string problem;          ///< one sentence, empty when all is well
    double cursorTravel = 0;      ///< m; where the axle is drawn
    Station cursor;               ///< the axle there; unusable where the links do not reach
    NumberStyle style;
    PointId selection;
    std::optional<Ghost> pointed;    ///< the hole combination pointed at on the board
    std::optional<Ghost> baseline;   ///< the setup kept as the baseline
    bool showsUncertainty = true;    ///< the uncertainty of the figures is to be seen: bands, cloud, ±
    TraceUncertainty uncertainty{};  ///< the uncertainty of the figures of `trace`, in a drag too
    /// The instant center's cloud, drawn for `solvedCar` since it last settled; null while it is not there
    /// yet.
    std::shared_ptr<const IcCloud> cloud{};
    /// The target instant center while it is being dragged or set in the side view, car frame, m: forward,
    /// up.
    std::optional<Eigen::Vector2d> targetCenter{};
    /// What the person chose to happen to the links' lengths wherever holes are changed, on every page;
    /// absent: what suits the car. It lasts until another car is opened.
    std::optional<LengthTreatment> chosenLengths{};

    /// The same as far as the car has the links for it.
    [[nodiscard]] LengthTreatment lengths() const { return treatmentFor(car, chosenLengths); }
};

/// A change of the car comes whole, or as a drag: any number of `dragging`, then `dragged` or `abandoned`. A
/// drag is one undo step.
enum class EditPhase { whole, dragging, dragged, abandoned };

}  // namespace bolthole

Q_DECLARE_METATYPE(bolthole::Edit)
