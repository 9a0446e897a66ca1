// The hole board: every hole combination as a dot on a map of instant-center distance and anti-squat, and the
// same as a table, with one selection between them.
#pragma once

#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "geometry/combinations/combination_figures.h"
#include "geometry/uncertainty/combination_uncertainty.h"
#include "widgets/state/bench_state.h"

namespace bolthole {

/// What the board shows, computed so far. Owned by the window; the board reads it in place. A change of
/// `combinations` goes with one of `car` or of their number, one of `uncertainties` with one of
/// `uncertaintyCount`, and showBoard() should follow soon: until then rows that have moved stay blank.
struct BoardState {
    /// What is varied until the person says otherwise: a track bar's holes set the roll center, not what this
    /// board compares.
    static constexpr CombinationScope kFirstScope{.tieSides = false, .crosswise = false};

    LengthTreatment lengths = LengthTreatment::keep;
    CombinationScope scope = kFirstScope;
    std::uint64_t total = 0;  ///< combinations in the space
    bool mayCompute = true;   ///< false: more than kManyCombinations, and the person was not asked yet
    bool complete = false;    ///< every combination is there
    bool inDrag = false;      ///< they are of a car that is being dragged: more follow at once
    std::vector<HoleCombination> combinations;  ///< solved so far, the present one first
    std::optional<std::uint64_t> present;       ///< index of the combination the car is bolted to
    std::shared_ptr<const Car> car;             ///< the car they were computed for; null: none can be
    QString problem;                            ///< why none can be, in words; empty if they can
    /// The uncertainty of each combination, by its index in the space, computed once every combination is
    /// there. Empty before; all NaN: not computed yet, or not known.
    std::vector<CombinationUncertainty> uncertainties{};
    std::size_t uncertaintyCount = 0;  ///< how many of them are computed
};

class HoleBoardParts;

/// Map and table. Point at a combination: pointedAt(). Enter, double-click or the button bolts it:
/// edited(ChooseHoles). Drag on the map to set the target: edited(SetTarget), one undo step a drag.
class HoleBoard : public QWidget {
    Q_OBJECT
  public:
    explicit HoleBoard(QWidget* parent = nullptr);
    ~HoleBoard() override;

    /// Takes the bench (units, target window, theme) and the board. Both must outlive the board or be shown
    /// anew. Cheap enough to be called five times a second with 65,536 combinations.
    void showBoard(const BenchState& bench, const BoardState& board);

    /// Gives up a drag of the target window under way.
    void abandonDrag();

    /// Where the map draws a combination, in the map's widget coordinates, for tests and accessibility;
    /// nothing if it has no place there (can't be assembled, or filtered away).
    [[nodiscard]] std::optional<QPointF> placeOf(std::uint64_t combination) const;
    /// The map, for tests.
    [[nodiscard]] QWidget& map();

    [[nodiscard]] QSize sizeHint() const override { return {1000, 330}; }
    [[nodiscard]] QSize minimumSizeHint() const override { return {560, 170}; }

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);
    /// The person points at a combination, or at none any more, as while the board is out of sight: to be
    /// shown as a ghost.
    void pointedAt(const std::optional<bolthole::HoleUse>& use);
    void lengthsChosen(bolthole::LengthTreatment lengths);
    void scopeChosen(const bolthole::CombinationScope& scope);
    /// The person wants the many combinations computed after all.
    void computeRequested();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

  private:
    std::unique_ptr<HoleBoardParts> parts_;
};

}  // namespace bolthole
