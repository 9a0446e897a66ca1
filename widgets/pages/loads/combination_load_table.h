// The worst link load of every hole combination, computed a few at a time so that the window stays quick.
#pragma once

#include <QTimer>
#include <memory>
#include <vector>

#include "geometry/combinations/combination_loads.h"
#include "widgets/kit/read_table.h"

namespace bolthole {

/// A row a combination, least load first, the present one marked in words and bold.
class CombinationLoadTable : public ReadTable {
    Q_OBJECT
  public:
    /// Combinations computed at most: those that move the fewest bolts.
    static constexpr std::size_t kMostCombinations = 500;
    /// Rows of travel each is swept in at most, so that a fine sweep does not hold up the window.
    static constexpr int kMostRows = 161;
    enum Column { kHoles, kBolts, kLoad, kJoint, kAt, kOfRating, kAntiSquat, kRemark };
    explicit CombinationLoadTable(QWidget* parent = nullptr);
    ~CombinationLoadTable() override;

    /// Starts computing the combinations of `car`, which must have passed findFaults(); the same car and case
    /// again are only shown anew.
    void showCombinations(const Car& car, LengthTreatment lengths, const LinkCase& with, Units units);
    /// Shows none, and computes no more.
    void showNone();
    /// How many there are and how many are shown, and how the rods' lengths go along, in words.
    [[nodiscard]] QString summary() const;
    /// Whether some load is one possible share, and whether somewhere a spring would have to pull.
    [[nodiscard]] bool hasShared() const;
    [[nodiscard]] bool hasPulling() const;
    [[nodiscard]] bool isRunning() const { return timer_.isActive(); }

  signals:
    void progressed();  ///< summary() reads otherwise now

  protected:
    void hideEvent(QHideEvent* event) override;
    void showEvent(QShowEvent* event) override;

  private:
    struct Job;
    void work();
    void showRows();
    void showRow(int row, const CombinationLoad& combination);

    std::unique_ptr<Job> job_;
    QTimer timer_;
    Units units_ = Units::inch;
};

}  // namespace bolthole
