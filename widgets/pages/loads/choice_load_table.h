// The worst link load of every hole choice, computed a few at a time so that the window stays quick.
#pragma once

#include <QTimer>
#include <memory>
#include <vector>

#include "geometry/choices/choice_loads.h"
#include "widgets/kit/read_table.h"

namespace bolthole {

/// A row a choice, least load first, the present one marked in words and bold.
class ChoiceLoadTable : public ReadTable {
    Q_OBJECT
  public:
    /// Choices computed at most: those that move the fewest bolts.
    static constexpr std::size_t kMostChoices = 500;
    /// Rows of travel each is swept in at most, so that a fine sweep does not hold up the window.
    static constexpr int kMostRows = 161;
    enum Column { kHoles, kBolts, kLoad, kJoint, kAt, kOfRating, kAntiSquat, kRemark };
    explicit ChoiceLoadTable(QWidget* parent = nullptr);
    ~ChoiceLoadTable() override;

    /// Starts computing the choices of `car`, which must have passed findFaults(); the same car and case
    /// again are only shown anew.
    void showChoices(const Car& car, const LinkCase& with, Units units);
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
    void showRow(int row, const ChoiceLoad& choice);

    std::unique_ptr<Job> job_;
    QTimer timer_;
    Units units_ = Units::inch;
};

}  // namespace bolthole
