// The views of the bench over one another: side, rear or top, or all three where there is room.
#pragma once

#include <QWidget>
#include <array>

#include "widgets/state/bench_state.h"

class QAction;
class QActionGroup;
class QGridLayout;

namespace bolthole {

class AcrossView;
class BenchPicture;
class SideView;

/// Shows BenchState in the view chosen; a view that is not seen is neither laid out nor painted. Passes on
/// what the views ask for.
class ViewDeck : public QWidget {
    Q_OBJECT
  public:
    enum class Shown { side, rear, top, all };
    /// The window's width from which all three can be shown at once, pixels.
    static constexpr int kRoomForAll = 1700;

    explicit ViewDeck(QWidget* parent = nullptr);

    /// Shows the state, which must outlive the deck or be shown anew.
    void showState(const BenchState& state);
    /// The same for the picture under the hand alone, the one a point is dragged in, else the first one seen;
    /// and for the others: in a drag they need not follow at once.
    void showUnderHand(const BenchState& state);
    void showOthers(const BenchState& state);
    /// All three fall back to the side view where the window is too narrow.
    void choose(Shown shown);
    [[nodiscard]] Shown shown() const { return shown_; }
    /// What was chosen, though the window may be too narrow for it.
    [[nodiscard]] Shown chosen() const { return chosen_; }
    /// Fits what every view shows: also of those not seen.
    void showLinks();
    void showAll();
    /// Gives up a drag in any view.
    void abandonDrag();

    [[nodiscard]] SideView& sideView() { return *side_; }
    [[nodiscard]] AcrossView& rearView() { return *rear_; }
    [[nodiscard]] AcrossView& topView() { return *top_; }
    /// One action a choice, in the order of Shown; for a menu.
    [[nodiscard]] QActionGroup& choices() { return *choices_; }

  signals:
    void edited(const bolthole::Edit& edit, bolthole::EditPhase phase);
    void selected(const bolthole::PointId& id);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;

  private:
    void addView(Shown shown, const QString& entry, const QString& name, const QString& tip);
    void dressSwitch();
    void lookForRoom();
    void lay(Shown shown);
    void placeSwitch();
    [[nodiscard]] bool isShown(std::size_t view) const;
    [[nodiscard]] std::size_t underHand() const;

    const BenchState* state_ = nullptr;
    Shown shown_ = Shown::side;
    Shown chosen_ = Shown::side;
    SideView* side_;
    AcrossView* rear_;
    AcrossView* top_;
    std::array<BenchPicture*, 3> views_;
    QGridLayout* grid_;
    QActionGroup* choices_;
    QWidget* switch_;
    QWidget* allButton_ = nullptr;
};

}  // namespace bolthole
