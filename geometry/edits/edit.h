// Changes of a car: the one way anything a person does reaches it.
//
// A view emits an Edit; the document applies it and records one undoable step. Edits hold ids and values, SI
// units.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <type_traits>
#include <variant>
#include <vector>

#include "geometry/car/car.h"
#include "geometry/car/field_id.h"
#include "geometry/car/numbers.h"
#include "geometry/combinations/hole_combination.h"
#include "geometry/edits/ride_change.h"

namespace bolthole {

/// Changes one number. An absent optional number comes to be. A length, here and in the moves below, that
/// misses a whole nanometer by rounding alone is taken to be it, so that the car file shows short decimals.
/// Typed, it counts as measured from then on; stepped, as what it was; worked out, it does not.
struct SetNumber {
    /// How somebody came by the number.
    enum class By { typed, stepped, workedOut };
    FieldId id;
    double value = 0;  ///< SI
    By by = By::typed;
};
/// Changes numbers that belong together in one step: an estimate with its ±. All of them or none.
struct SetNumbers {
    std::vector<SetNumber> numbers;  ///< not empty
};
/// Removes an optional number: a written link length (fitted to the holes from then on) or the rear track.
struct ClearNumber {
    FieldId id;
};
/// Moves a hole in the car frame, m.
struct MoveHole {
    int link = 0;
    End end = End::chassis;
    int hole = 0;
    Eigen::Vector3d at = Eigen::Vector3d::Zero();
};
/// Bolts the link to another hole.
struct UseHole {
    int link = 0;
    End end = End::chassis;
    int hole = 0;
};
/// Moves a driveline joint: on the axle (pinion) or the chassis (output).
struct MoveJoint {
    End end = End::axle;
    Eigen::Vector3d at = Eigen::Vector3d::Zero();
};
struct SetUnits {
    Units units = Units::inch;
};
struct SetTitle {
    std::string title;
};
struct SetNotes {
    std::string notes;
};
/// Gives the link an adjuster, or takes it away.
struct SetAdjuster {
    int link = 0;
    std::optional<Adjuster> adjuster;
};

/// Gives the car a driveline, or takes it away.
struct SetDriveline {
    std::optional<Driveline> driveline;
};
struct RenameLink {
    int link = 0;
    std::string name;  ///< not blank
};
struct RenameHole {
    int link = 0;
    End end = End::chassis;
    int hole = 0;
    std::string name;  ///< not blank
};
/// Appends a hole to a bracket; the one in use stays.
struct AddHole {
    int link = 0;
    End end = End::chassis;
    Hole hole;
};
/// Removes a hole, never the last one. The bolt stays in its hole; if that is the one removed, it goes to the
/// next hole, or to the last where there is no next.
struct RemoveHole {
    int link = 0;
    End end = End::chassis;
    int hole = 0;
};
/// Sets the target window, or takes it away.
struct SetTarget {
    std::optional<TargetWindow> target;
};
/// Says that a hole is planned, or that it has been drilled.
struct SetPlanned {
    int link = 0;
    End end = End::chassis;
    int hole = 0;
    bool planned = true;
};
/// Enters the plate of a bracket, or takes it away; see refusal(const Plate&).
struct SetPlate {
    int link = 0;
    End end = End::chassis;
    std::optional<Plate> plate;
};
/// Bolts every link to the holes of a combination and gives its rods the lengths the treatment asks for, in
/// one step.
struct ChooseHoles {
    HoleUse use;
    LengthTreatment lengths = LengthTreatment::keep;
};
/// Adds a hole that is not drilled yet, and the same to a link on the car's other side that goes with this
/// one; bolts to it and gives the rods the lengths the treatment asks for, in one step.
struct PlanHole {
    int link = 0;
    End end = End::chassis;
    Hole hole;
    LengthTreatment lengths = LengthTreatment::keep;
};
/// Keeps a state of the car, the present one unless `other` is given, and makes it the baseline unless told
/// otherwise. Refuses a car that does not pass findFaults(), as SwapBaseline does.
struct KeepSetup {
    std::string name;  ///< not blank
    std::string date;
    std::string note;
    std::shared_ptr<const Car> other;
    bool asBaseline = true;
};
/// Renames a kept setup and rewrites its note.
struct DescribeKept {
    int state = 0;
    std::string name;  ///< not blank
    std::string note;
};
/// Makes a kept setup the baseline, or none.
struct SetBaseline {
    std::optional<int> state;
};
/// Refused while a pass stands on the state; passes that stand on later ones follow them.
struct RemoveKept {
    int state = 0;
};
/// Brings a kept setup back to the bench; the kept ones stay. Units and the target stay as they are.
struct RestoreKept {
    int state = 0;
};
/// The baseline goes to the bench, and what stood there takes its place, under the name it was kept by if not
/// changed since, else as "after ...". Where a pass stands on the baseline, that stays kept, and what stood
/// on the bench is kept beside it.
struct SwapBaseline {
    std::string date;
};
/// Appends a link. Refuses one without a name and what findFaults() would refuse of it, as ChangeLink does.
struct AddLink {
    Link link;
};
struct RemoveLink {
    int link = 0;
};
/// Puts `link` in the place of another: another kind, side or role.
struct ChangeLink {
    int index = 0;
    Link link;
};
/// Makes two links of a mirrored pair, left and right, that can then be set apart. The right one follows the
/// left one in Car::links and has its name.
struct SplitLink {
    int link = 0;
};
/// Makes a mirrored pair of a left and a right link of one name and kind; both then have the points, length
/// and adjuster of `link`, which is either of them.
struct JoinLinks {
    int link = 0;
};
/// Whether JoinLinks can join the link.
[[nodiscard]] bool isHalfOfPair(const Car& car, int link);

/// A word of the car that is one of several.
enum class Choice {
    cornersAre,    ///< DriverSeat
    cgHeightFrom,  ///< CgHeightSource
    liftRaised,    ///< CarEnd
    liftRead,      ///< CarEnd
    liftDriver,    ///< DriverSeat
    ticketDriver,  ///< DriverSeat
    launchFrom,    ///< LaunchFrom
    differential,  ///< 0: not entered; then 1 above the number of the Differential
    coupling,      ///< 0: not entered; then 1 above the number of the CouplingKind
    body           ///< 0: not chosen; then 1 above the number of the Body
};
/// How many a choice has, and which it is: the number of the enumerator.
[[nodiscard]] int optionsOf(Choice choice);
[[nodiscard]] int chosen(const Car& car, Choice choice);
/// Chooses one of them.
struct SetChoice {
    Choice choice = Choice::cornersAre;
    int option = 0;
};
/// Puts the engine's torque by speed in the place of what was entered; empty: none is known. See
/// refusal(const std::vector<TorquePoint>&).
struct SetTorque {
    std::vector<TorquePoint> torque;
};
/// Gives the front shocks, or those of a spring or shock of the list, their forces, or takes them away. See
/// refusal(const Damping&). A click that was set stays where the new table has it.
struct SetDamping {
    int item = -1;  ///< of Car::springs; below 0: the front
    std::optional<Damping> damping;
};
/// Appends a load; its name is not blank.
struct AddBallast {
    EnteredBallast ballast;
};
struct RemoveBallast {
    int item = 0;
};
struct RenameBallast {
    int item = 0;
    std::string name;  ///< not blank
};
/// Appends a spring, shock, bump stop or strap; its name is not blank.
struct AddSpring {
    SuspensionPart part;
};
struct RemoveSpring {
    int item = 0;
};
/// Puts `part` in the place of another: another name, kind or side, other holes or another one in use.
struct ChangeSpring {
    int item = 0;
    SuspensionPart part;
};
/// Enters a pass, after those of the same or an earlier day and time. Without a setup of its own it takes the
/// car as it stands: that is kept first, under a name that says what changed, unless it is a kept setup
/// already. Refuses what findFault() of geometry/passes/pass_fields.h finds, as ChangePass does.
struct AddPass {
    Pass pass;
};
/// Puts `pass` in the place of another; it moves where its day or time says so.
struct ChangePass {
    int index = 0;
    Pass pass;
};
/// The setup it stands on stays kept.
struct RemovePass {
    int index = 0;
};
/// Strikes a pass, which then counts nowhere, or takes that back.
struct StrikePass {
    int index = 0;
    bool struck = true;
};
/// Takes over what the passes taught of the launch's least known numbers. Scales multiply the tables of the
/// car and of every kept setup: what is known better now was so when those ran. A single number goes to the
/// car and to the kept setups that held what the car held, so that setups differ by what they differed by
/// before. Refuses, and changes nothing, where a number or table would leave its limits. The uncertainty of
/// the numbers stays as entered: the passes stay in the file and would else be counted twice.
struct CorrectLaunch {
    OptionalNumber friction = std::nullopt;
    OptionalNumber stallSpeed = std::nullopt;  ///< rad/s
    OptionalNumber peakSlip = std::nullopt;    ///< percent
    double torqueScale = 1;
    double frontDampingScale = 1;
    double rearDampingScale = 1;
};
/// Other tires or another ride height; every measured point is re-based. See geometry/edits/ride_change.h.
struct ChangeRide {
    RideChange change;
};

/// One change of a car: any of the kinds above. A class of its own, written out in edit_kind.cpp, because
/// what a variant of so many kinds copies, moves and ends by would else be compiled by every source that
/// includes this.
class Edit {
  public:
    using Kind =
        std::variant<SetNumber, ClearNumber, MoveHole, UseHole, MoveJoint, SetUnits, SetTitle, SetNotes,
                     SetAdjuster, SetDriveline, RenameLink, RenameHole, AddHole, RemoveHole, SetTarget,
                     ChooseHoles, KeepSetup, DescribeKept, SetBaseline, RemoveKept, RestoreKept, SwapBaseline,
                     ChangeRide, SetChoice, AddBallast, RemoveBallast, RenameBallast, AddSpring, RemoveSpring,
                     ChangeSpring, AddLink, RemoveLink, ChangeLink, SplitLink, JoinLinks, SetPlate,
                     SetPlanned, PlanHole, AddPass, ChangePass, RemovePass, StrikePass, SetNumbers, SetTorque,
                     CorrectLaunch, SetDamping>;

    Edit();  ///< sets no number: what a signal's argument is before it is one
    Edit(const Edit& other);
    Edit(Edit&& other) noexcept;
    Edit& operator=(const Edit& other);
    Edit& operator=(Edit&& other) noexcept;
    ~Edit();

    /// Any of the kinds; each must be named in edit_kind.cpp.
    template <class One>
    requires(!std::is_same_v<One, Edit> && std::is_constructible_v<Kind, One>)
        Edit(One kind);  // NOLINT(google-explicit-constructor): an edit is one of its kinds

    [[nodiscard]] const Kind& kind() const { return kind_; }
    /// The edit as that kind, null where it is another.
    template <class One>
    [[nodiscard]] const One* as() const {
        return std::get_if<One>(&kind_);
    }

  private:
    Kind kind_;
};

/// What came of an edit: the changed car, or why it was refused (then the car is the one that went in).
struct EditResult {
    Car car;
    std::string refusal;  ///< empty: applied
};

/// Applies an edit to a copy. Refuses values outside the car file's limits and ids that name no part.
[[nodiscard]] EditResult apply(const Car& car, const Edit& edit);

/// The edit in a person's words, for the undo list: "Move lower axle hole 'top' to 12 3/8 in forward, ...".
/// `before` is the car it applies to.
[[nodiscard]] std::string describe(const Edit& edit, const Car& before);

}  // namespace bolthole
