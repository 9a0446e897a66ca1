// Between the page of the test days and what a page does not know: files, the clipboard, the ghost on the
// bench.
#pragma once

#include <QObject>
#include <memory>
#include <optional>

#include "widgets/state/bench_state.h"

namespace bolthole {

class TestDaysPage;

/// Takes tables in and writes them, and keeps the setup of the picked pass as a ghost on the bench.
class PassController : public QObject {
    Q_OBJECT
  public:
    /// `bench` and `page` must outlive the controller.
    PassController(BenchState& bench, TestDaysPage& page, QObject* parent);

    /// The car on the bench changed, or another ghost went: puts the picked setup's back where none stands.
    void keepGhost();
    /// Shows what a table would bring and takes it in where the person says so; where something in it can't
    /// be read, nothing.
    void takeTable(const QByteArray& bytes, const QString& source);

  signals:
    /// BenchState::pointed changed.
    void pointedChanged();
    /// The person wants these passes in the place of all there are.
    void passesRead(const std::vector<bolthole::Pass>& passes);
    /// Something went wrong, in one line.
    void said(const QString& words);

  private:
    void point(const std::optional<int>& state);
    void readFile();
    void readClipboard();
    void writeFile();

    BenchState& bench_;
    TestDaysPage& page_;
    std::optional<Ghost> ghost_;
    std::shared_ptr<const Car> pointed_;  // the kept car of the picked pass
};

}  // namespace bolthole
