// How a pass stands in the car file; part of app/carfile/car_file_shape.h.
#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "app/carfile/car_file_io.h"
#include "geometry/car/pass_fields.h"
#include "geometry/units/say.h"

namespace bolthole::detail {

/// The words of the file for what a pass was run on.
[[nodiscard]] inline std::array<Word<SurfaceKind>, kSurfaceKinds> surfaceWords() {
    std::array<Word<SurfaceKind>, kSurfaceKinds> words;
    for (std::size_t kind = 0; kind < kSurfaceKinds; ++kind) {
        words[kind] = {surfaceKindKeys()[kind], static_cast<SurfaceKind>(kind)};
    }
    return words;
}

template <typename Io>
void exchange(Io& io, PassSurface& surface) {
    static const std::array<Word<SurfaceKind>, kSurfaceKinds> words = surfaceWords();
    io.optionalWord("kind", surface.kind, words);
    io.rareText("name", surface.name);
    io.passNumber("temperature", surface.temperature, PassField::surfaceTemperature);
}

template <typename Io>
void exchange(Io& io, PassAir& air) {
    io.passNumber("temperature", air.temperature, PassField::airTemperature);
    io.passNumber("pressure", air.pressure, PassField::airPressure);
    io.passNumber("humidity", air.humidity, PassField::humidity);
}

/// The tires' pressures; another object of four corners has other limits.
struct PassPressures {
    EnteredCorners& corners;
};

template <typename Io>
void exchange(Io& io, PassPressures& pressures) {
    io.passNumber("left_front", pressures.corners.leftFront, PassField::leftFrontPressure);
    io.passNumber("right_front", pressures.corners.rightFront, PassField::rightFrontPressure);
    io.passNumber("left_rear", pressures.corners.leftRear, PassField::leftRearPressure);
    io.passNumber("right_rear", pressures.corners.rightRear, PassField::rightRearPressure);
}

template <typename Io>
void exchange(Io& io, PassTimes& times) {
    io.passNumber("330ft", times.threeThirty, PassField::threeThirty);
    io.passNumber("eighth", times.eighth, PassField::eighth);
    io.passNumber("eighth_speed", times.eighthSpeed, PassField::eighthSpeed);
    io.passNumber("quarter", times.quarter, PassField::quarter);
    io.passNumber("quarter_speed", times.quarterSpeed, PassField::quarterSpeed);
}

/// A unit is checked against its kind when the whole recording is there.
[[nodiscard]] inline std::string refuseUnitText(std::string_view text) {
    return text.empty() ? say("a unit") : std::string();
}

template <typename Io>
void exchange(Io& io, RecordedColumn& column) {
    io.ruledText("header", column.header, refuseHeader);
    io.ruledText("unit", column.unit, refuseUnitText);
}

/// The columns of a recording, by what they are.
struct RecordedColumns {
    std::vector<RecordedColumn>& columns;
};

template <typename Io>
void exchange(Io& io, RecordedColumns& all) {
    std::vector<RecordedColumn> columns;
    for (std::size_t kind = 0; kind < kRecordedKinds; ++kind) {
        const auto found = std::ranges::find(all.columns, static_cast<Recorded>(kind), &RecordedColumn::is);
        std::optional<RecordedColumn> column;
        if (found != all.columns.end()) {
            column = *found;
        }
        io.optionalObject(recordedKeys()[kind].data(), column);
        if (column) {
            column->is = static_cast<Recorded>(kind);
            columns.push_back(*column);
        }
    }
    all.columns = columns;
}

template <typename Io>
void exchange(Io& io, PassRecording& recording) {
    RecordedColumns columns{recording.columns};
    io.ruledText("file", recording.file, refuseFileName);
    io.ruledText("sha256", recording.sha256, refuseHash);
    io.realBetween("start", recording.start, -kMostRecordedTime, kMostRecordedTime);
    io.rareObject("columns", columns);
    io.check(refusal(recording));
}

/// That the setup is one the car keeps, only the whole car tells: findFaults().
template <typename Io>
void exchange(Io& io, Pass& pass) {
    PassPressures pressures{pass.pressures};
    io.wholeBetween("number", pass.number, kLeastPassNumber, kMostPassNumber);
    io.ruledText("date", pass.date, refuseDate);
    io.rareRuledText("time", pass.time, refuseTime);
    io.rareText("place", pass.place);
    io.optionalIndex("setup", pass.setup, kMaxKept);
    io.rareFlag("struck", pass.struck);
    io.rareObject("surface", pass.surface);
    io.rareObject("air", pass.air);
    io.rareObject("pressures", pressures);
    io.passNumber("launch_rpm", pass.launchRpm, PassField::launchRpm);
    io.passNumber("sixty_foot", pass.sixtyFoot, PassField::sixtyFoot);
    io.rareObject("times", pass.times);
    io.wordSet("seen", pass.seen, seenKeys());
    io.rareText("note", pass.note);
    io.optionalObject("recording", pass.recording);
}

}  // namespace bolthole::detail
