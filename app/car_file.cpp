#include "app/car_file.h"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

#include "app/car_file_io.h"

namespace bolthole {

namespace detail {

namespace {

constexpr std::array<Word<Units>, 2> kUnitWords{{{"inch", Units::inch}, {"metric", Units::metric}}};
constexpr std::array<Word<LinkKind>, 4> kKindWords{{{"rod", LinkKind::rod},
                                                    {"pivot", LinkKind::pivot},
                                                    {"slider", LinkKind::slider},
                                                    {"guide", LinkKind::guide}}};
constexpr std::array<Word<Side>, 4> kSideWords{
    {{"both", Side::both}, {"left", Side::left}, {"right", Side::right}, {"center", Side::center}}};
constexpr std::array<Word<Role>, 3> kRoleWords{
    {{"lower", Role::lower}, {"upper", Role::upper}, {"crosswise", Role::crosswise}}};

/// A car without the marks of a file, as it stands in a kept state.
struct KeptCar {
    Car car;
};

FieldId endOf(FieldId at, End end) {
    at.end = end;
    return at;
}

}  // namespace

// The description of the file: one function an object, keys in the order a new file gets them. Serves Reader
// and Writer alike.

template <typename Io>
void exchange(Io& io, CornerWeights& weights) {
    io.number("left_front", weights.leftFront, Field::leftFrontWeight);
    io.number("right_front", weights.rightFront, Field::rightFrontWeight);
    io.number("left_rear", weights.leftRear, Field::leftRearWeight);
    io.number("right_rear", weights.rightRear, Field::rightRearWeight);
}

template <typename Io>
void exchange(Io& io, TravelRange& travel) {
    constexpr TravelRange kDefault;
    io.number("bump", travel.bump, Field::bump, kDefault.bump);
    io.number("droop", travel.droop, Field::droop, kDefault.droop);
    io.whole("steps", travel.steps, Field::steps, kDefault.steps);
    io.number("front_ratio", travel.frontRatio, Field::frontRatio, kDefault.frontRatio);
}

template <typename Io>
void exchange(Io& io, Hole& hole) {
    io.text("name", hole.name);
    io.point("at", hole.at, Field::holeAt);
}

template <typename Io>
void exchange(Io& io, Bracket& bracket) {
    io.list("holes", bracket.holes, 1, kMaxHoles, &FieldId::hole);
    io.index("use", bracket.use, bracket.holes.size());
}

template <typename Io>
void exchange(Io& io, Adjuster& adjuster) {
    io.number("pitch", adjuster.pitch, Field::adjusterPitch);
    io.whole("ends", adjuster.threadedEnds, Field::adjusterEnds);
    io.optionalNumber("shortest", adjuster.shortest, Field::adjusterShortest);
    io.optionalNumber("longest", adjuster.longest, Field::adjusterLongest);
    io.optionalNumber("engagement", adjuster.engagement, Field::adjusterEngagement);
    io.optionalNumber("engagement_at", adjuster.engagementAt, Field::adjusterEngagementAt);
    io.optionalNumber("least_engagement", adjuster.leastEngagement, Field::adjusterLeastEngagement);
}

template <typename Io>
void exchange(Io& io, Link& link) {
    io.text("name", link.name);
    io.word("kind", link.kind, kKindWords);
    io.word("side", link.side, kSideWords, std::optional(Side::both));
    io.optionalWord("role", link.role, kRoleWords);
    io.object("chassis", link.chassis, endOf(io.at(), End::chassis));
    io.object("axle", link.axle, endOf(io.at(), End::axle));
    io.optionalNumber("length", link.length, Field::linkLength);
    io.optionalObject("adjuster", link.adjuster);
    io.optionalNumber("rod_end_limit", link.rodEndLimit, Field::rodEndLimit);
}

template <typename Io>
void exchange(Io& io, Driveline& driveline) {
    io.number("pinion_angle", driveline.pinionAngle, Field::pinionAngle);
    io.point("pinion_joint", driveline.pinionJoint, Field::pinionJoint);
    io.number("output_angle", driveline.outputAngle, Field::outputAngle);
    io.point("output_joint", driveline.outputJoint, Field::outputJoint);
    io.optionalNumber("joint_limit", driveline.jointLimit, Field::jointLimit);
}

template <typename Io>
void exchange(Io& io, WantedWindow& wanted) {
    io.optionalNumber("ic_near", wanted.icNear, Field::wantedIcNear);
    io.optionalNumber("ic_far", wanted.icFar, Field::wantedIcFar);
    io.number("anti_squat_low", wanted.antiSquatLow, Field::wantedLow);
    io.number("anti_squat_high", wanted.antiSquatHigh, Field::wantedHigh);
}

// What is said of the car itself; a kept state has the same keys.
template <typename Io>
void exchangeState(Io& io, Car& car) {
    io.optionalText("title", car.title);
    io.optionalText("notes", car.notes);
    io.word("units", car.units, kUnitWords, std::optional(Units::inch));
    io.number("wheelbase", car.wheelbase, Field::wheelbase);
    io.number("rear_tire_radius", car.rearTireRadius, Field::rearTireRadius);
    io.number("front_tire_radius", car.frontTireRadius, Field::frontTireRadius);
    io.optionalNumber("rear_track", car.rearTrack, Field::rearTrack);
    io.object("corner_weights", car.cornerWeights, io.at());
    io.number("cg_height", car.cgHeight, Field::cgHeight);
    io.defaultedObject("travel", car.travel);
    io.list("links", car.links, 0, kMaxLinks, &FieldId::link);
    io.optionalObject("driveline", car.driveline);
    io.optionalObject("wanted", car.wanted);
}

template <typename Io>
void exchange(Io& io, KeptCar& kept) {
    exchangeState(io, kept.car);
}

template <typename Io>
void exchange(Io& io, KeptState& state) {
    KeptCar kept;
    if (state.car) {
        kept.car = *state.car;
    }
    io.text("name", state.name);
    io.optionalText("date", state.date);
    io.optionalText("note", state.note);
    io.object("car", kept, io.at());
    state.car = std::make_shared<const Car>(std::move(kept.car));
}

template <typename Io>
void exchange(Io& io, Car& car) {
    io.mark("bolthole-car", kCarFileVersion);
    exchangeState(io, car);
    io.optionalList("kept", car.kept, kMaxKept);
    io.optionalIndex("before", car.before, car.kept.size());
    io.rareText("state_name", car.stateName);
    io.rareText("state_note", car.stateNote);
}

}  // namespace detail

namespace {

using Json = nlohmann::ordered_json;

std::string tooLarge() {
    return "larger than " + std::to_string(kMaxFileBytes) + " bytes";
}

ReadResult refused(std::string reason) {
    return {std::nullopt, {"", std::move(reason)}};
}

ReadResult carFrom(Json&& source) {
    LoadedCar loaded;
    try {
        detail::Reader reader(source, "", FieldId{});
        detail::exchange(reader, loaded.car);
    } catch (const FileProblem& problem) {
        return {std::nullopt, problem};
    }
    const std::vector<Fault> faults = findFaults(loaded.car);
    if (!faults.empty()) {
        return {std::nullopt, {faults.front().path, faults.front().reason}};
    }
    for (std::size_t state = 0; state < loaded.car.kept.size(); ++state) {
        const std::vector<Fault> theirs = findFaults(*loaded.car.kept[state].car);
        if (!theirs.empty()) {
            return {std::nullopt,
                    {pathOf("kept", state) + ".car." + theirs.front().path, theirs.front().reason}};
        }
    }
    loaded.source = std::move(source);
    return {std::move(loaded), {}};
}

}  // namespace

ReadResult readCar(std::string_view bytes) {
    if (bytes.size() > kMaxFileBytes) {
        return refused(tooLarge());
    }
    JsonResult json = parseJson(bytes);
    if (!json.value) {
        return {std::nullopt, json.problem};
    }
    return carFrom(std::move(*json.value));
}

FileBytes readCarBytes(const std::string& fileName) {
    const auto close = [](std::FILE* file) { std::fclose(file); };
    const std::unique_ptr<std::FILE, decltype(close)> file(std::fopen(fileName.c_str(), "rb"), close);
    if (!file) {
        return {{}, std::string("cannot be opened: ") + std::strerror(errno)};
    }
    // Reads one byte more than allowed at most: devices and pipes have no size to ask for.
    FileBytes read;
    std::array<char, 65536> block;
    std::size_t got = 0;
    while ((got = std::fread(block.data(), 1, block.size(), file.get())) > 0) {
        read.bytes.append(block.data(), got);
        if (read.bytes.size() > kMaxFileBytes) {
            return {{}, tooLarge()};
        }
    }
    if (std::ferror(file.get()) != 0) {
        return {{}, std::string("cannot be read: ") + std::strerror(errno)};
    }
    return read;
}

ReadResult readCarFile(const std::string& fileName) {
    FileBytes read = readCarBytes(fileName);
    return read.problem.empty() ? readCar(read.bytes) : refused(std::move(read.problem));
}

std::string writeCar(const Car& car, const Json& source) {
    Car copy = car;  // the description serves reading too and so takes parts it could change
    detail::Writer writer(source.empty() ? nullptr : &source);
    detail::exchange(writer, copy);
    return printJson(writer.finish());
}

}  // namespace bolthole
