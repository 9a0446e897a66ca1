// Recordings of passes as files: taken in, kept beside the car's file, found again.
#pragma once

#include <QDateTime>
#include <QObject>
#include <memory>
#include <optional>

#include "app/document/recording_file.h"
#include "geometry/fit/launch_fit.h"
#include "widgets/kit/job_runner.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

class Document;
class TestDaysPage;
struct ShownRecording;

/// Shows the picked pass's recording on the page; a file that is gone or was changed is said there. A table
/// that is added is copied beside the car's file, whole or not at all, and never over another. Files above
/// kReadAtOnce are read beside the window's thread, the card saying so.
class RecordingController : public QObject {
    Q_OBJECT
  public:
    /// All must outlive the controller.
    RecordingController(const BenchState& bench, const Document& document, TestDaysPage& page,
                        QObject* parent);

    /// Takes a table in for the pass, asking what its columns are.
    void addFile(std::size_t pass, const QString& fileName);
    /// What the passes taught, done or not, or null: recordings are held against it too.
    void showFit(const std::shared_ptr<const LaunchFit>& fit);

  signals:
    void edited(const bolthole::Edit& edit);
    void said(const QString& words);  ///< something went wrong, in one line

  private:
    void show(const std::optional<std::size_t>& pass);
    void makeShown(const Pass& pass);
    void ask();
    void remove();
    void moveStart(double by);
    [[nodiscard]] const Pass* pass() const;
    void takeTable(std::size_t row, const QString& fileName, const QByteArray& bytes,
                   const RecordingTable& read);
    [[nodiscard]] QString folder() const;
    [[nodiscard]] QString keep(const Pass& pass, const QString& fileName, const QByteArray& bytes);

    const BenchState& bench_;
    const Document& document_;
    TestDaysPage& page_;
    /// The table read last, as the page is shown anew with every change of the car.
    struct Read {
        QString path;
        qint64 size = 0;
        QDateTime changed;
        RecordingTable table;
    };
    /// All that the card's contents are made of, apart from the bench, and what was made of it.
    struct Task;
    struct Made;
    [[nodiscard]] static Made make(const Task& task);
    void take(Made made, Units units);
    [[nodiscard]] bool isLong(const QString& path) const;
    /// What the card shows is made of. While that is the same it is neither read nor launched again, and the
    /// card's cursor stays.
    struct Sources {
        Pass pass;
        std::shared_ptr<const Car> setup;  // null: the car on the bench, which may change at any time
        std::shared_ptr<const LaunchFit> fit;
        Units units = Units::inch;
        qint64 size = 0;
        QDateTime changed;

        bool operator==(const Sources&) const = default;
    };
    [[nodiscard]] Sources sourcesOf(const Pass& pass) const;
    [[nodiscard]] const Car& setupOf(const Pass& pass) const;
    [[nodiscard]] QString pathOf(const Pass& pass) const;

    std::shared_ptr<const LaunchFit> fit_;
    std::optional<std::size_t> shown_;
    std::shared_ptr<const Read> last_;
    std::optional<Sources> made_;  // of what the card shows
    JobRunner shows_;
    JobRunner adds_;
};

}  // namespace bolthole
