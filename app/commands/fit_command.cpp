#include "app/commands/fit_command.h"

#include <QDir>
#include <QFileInfo>
#include <algorithm>
#include <string_view>

#include "app/commands/csv_text.h"
#include "app/document/recording_file.h"
#include "geometry/fit/fitted_launch.h"
#include "geometry/fit/recording_misfit.h"
#include "geometry/units/csv.h"
#include "geometry/units/parallel.h"
#include "geometry/units/text.h"

namespace bolthole {

namespace {

std::string_view fittedName(LaunchNumber number) {
    switch (number) {
        case LaunchNumber::friction:
            return "friction";
        case LaunchNumber::torqueScale:
            return "torque_scale";
        case LaunchNumber::stallSpeed:
            return "stall_rpm";
        case LaunchNumber::frontDampingScale:
            return "front_damping_scale";
        case LaunchNumber::rearDampingScale:
            return "rear_damping_scale";
        case LaunchNumber::peakSlip:
            break;
    }
    return "peak_slip_pct";
}

std::string numbersTable(const LaunchFit& fit) {
    std::string table = "figure,before,before_u,after,after_u,told_by_pct" + std::string(kLineEnd);
    for (const FittedNumber& number : fit.numbers) {
        const double unit = number.number == LaunchNumber::stallSpeed ? kRpm : 1;
        std::string name(fittedName(number.number));
        if (number.number == LaunchNumber::friction && fit.surfaces.size() > 1) {
            name += " " + number.surface;
        }
        table += csvField(name);
        for (const double value : {number.before, number.beforeU, number.after, number.afterU}) {
            table += "," + plainDecimal(value / unit);
        }
        table += "," + plainDecimal(number.toldPercent()) + std::string(kLineEnd);
    }
    return table;
}

/// What a pass is called in the table: its number, with the day before it where another day has it too.
std::string passName(const Car& car, const Pass& pass) {
    const bool isRepeated = std::ranges::any_of(car.passes, [&pass](const Pass& other) {
        return other.number == pass.number && other.date != pass.date;
    });
    return (isRepeated ? pass.date + " " : "") + std::to_string(pass.number);
}

std::string passesTable(const LaunchFit& fit, const Car& car) {
    std::string table = "pass,run_s,predicted_s,predicted_u" + std::string(kLineEnd);
    for (const FittedPass& pass : fit.passes) {
        table += csvField(passName(car, car.passes[pass.row])) + "," + plainDecimal(pass.run) + "," +
                 plainDecimal(pass.predicted) + "," + plainDecimal(pass.predictedU) + std::string(kLineEnd);
    }
    return table;
}

ReadRecording recordingBeside(const std::string& carFile, const PassRecording& pass) {
    const QDir folder = QFileInfo(QString::fromStdString(carFile)).absoluteDir();
    const std::optional<QByteArray> bytes =
        recordingBytes(folder.filePath(QString::fromStdString(pass.file)));
    if (!bytes) {
        return recordingOf(pass, nullptr);
    }
    const RecordingTable found = recordingTable(*bytes);
    return recordingOf(pass, &found);
}

// In the unit the recording is in.
std::string sampleRows(const std::string& pass, const RecordedMisfit& misfit,
                       const PassRecording& recording) {
    const auto column = std::ranges::find(recording.columns, misfit.kind, &RecordedColumn::is);
    const RecordedUnit& unit = unitOf(*column);
    std::string rows;
    for (const RecordedSample& sample : misfit.samples) {
        rows += csvField(pass) + "," + plainDecimal(sample.time) + "," +
                std::string(recordedKeys()[static_cast<std::size_t>(misfit.kind)]) + "," +
                std::string(unit.mark) + "," + plainDecimal(sample.recorded / unit.size) + "," +
                plainDecimal(sample.computed / unit.size) + std::string(kLineEnd);
    }
    return rows;
}

LaunchOutcome onRecordings(const LaunchFit& fit, const Car& car, const std::string& carFile) {
    LaunchOutcome outcome;
    outcome.table = "pass,time_s,figure,unit,recorded,fitted" + std::string(kLineEnd);
    for (std::size_t row = 0; row < car.passes.size(); ++row) {
        const Pass& pass = car.passes[row];
        const std::optional<LaunchRun> run =
            pass.recording ? fittedLaunch(car, fit, row) : std::optional<LaunchRun>();
        if (!run) {
            continue;
        }
        const ReadRecording read = recordingBeside(carFile, *pass.recording);
        if (!read.problem.empty()) {
            outcome.complaints.push_back("passes[" + std::to_string(row) + "].recording: " + read.problem);
        }
        for (const RecordedMisfit& misfit : misfitsOf(read.recording, pass.recording->start, run->rows)) {
            outcome.table += sampleRows(passName(car, pass), misfit, *pass.recording);
        }
    }
    return outcome;
}

LaunchOutcome noPass(const LaunchFit& fit, const Car& car) {
    LaunchOutcome outcome{.end = LaunchOutcome::End::cannotRun};
    for (const UnusedPass& pass : fit.unused) {
        outcome.complaints.push_back("passes[" + std::to_string(pass.row) + "]: " +
                                     passWords(car.passes[pass.row]) + " is left out: " + pass.reason);
    }
    if (outcome.complaints.empty()) {
        outcome.complaints.emplace_back("passes: expected a pass with a sixty_foot that is not struck");
    }
    return outcome;
}

}  // namespace

LaunchOutcome runFit(const Request& request, const Car& car) {
    const LaunchFit fit = fitLaunch(car, {.threads = machineThreads()});
    if (fit.end == FitEnd::missing) {
        return cannotLaunch(fit.missing);
    }
    if (fit.end != FitEnd::done) {
        return noPass(fit, car);
    }
    if (request.has(kRecordingsOption)) {
        return onRecordings(fit, car, request.files().front());
    }
    LaunchOutcome outcome;
    outcome.table = request.has(kPassesOption) ? passesTable(fit, car) : numbersTable(fit);
    return outcome;
}

}  // namespace bolthole
