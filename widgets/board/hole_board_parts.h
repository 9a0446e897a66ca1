// What the hole board is put together from, and the one selection between map and table.
#pragma once

#include <QObject>
#include <optional>

#include "widgets/board/combination_list.h"
#include "widgets/board/hole_board.h"

class QPushButton;
class QStackedWidget;

namespace bolthole {

class CombinationMap;
class CombinationTable;
class HoleBoardHeader;
class HoleBoardTarget;
class ToneLabel;

/// Belongs to one board.
class HoleBoardParts : public QObject {
    Q_OBJECT
  public:
    explicit HoleBoardParts(HoleBoard& board);
    /// Takes the views down before the list they read.
    ~HoleBoardParts() override;

    void show(const BenchState& bench, const BoardState& state);
    /// A low board shows map and table alone.
    void fitTo(QSize size);
    [[nodiscard]] std::optional<QPointF> placeOf(std::uint64_t combination) const;
    [[nodiscard]] CombinationMap& map() { return *map_; }

    /// Says what is pointed at, where that is another than was said last: nothing while the board is hidden.
    void tellPointed();

  private:
    void build();
    [[nodiscard]] QWidget* buildButton();
    [[nodiscard]] QWidget* buildMessage();
    [[nodiscard]] QWidget* buildCombinations();
    void connectParts();

    void refreshViews();
    void applyFilter();
    [[nodiscard]] bool showMessage();
    [[nodiscard]] const QString& estimateFor(const BoardState& state);
    void showOrder();
    void showButton();
    void showUncertainty();

    void hover(const std::optional<std::size_t>& at);
    void select(const std::optional<std::size_t>& at, bool reveal);
    void forgetHidden();
    void showMarks(bool reveal);
    void bolt(std::size_t at);
    /// Why the combination can't be bolted to; empty: it can.
    [[nodiscard]] QString refuseBolt(const std::optional<std::size_t>& at) const;

    HoleBoard& board_;
    const BenchState* bench_ = nullptr;
    const BoardState* state_ = nullptr;
    CombinationList list_;
    std::optional<HoleUse> selected_;
    std::optional<HoleUse> hovered_;
    std::optional<HoleUse> told_;  // last pointedAt()

    HoleBoardHeader* header_ = nullptr;
    QStackedWidget* pages_ = nullptr;
    QWidget* combinationsPage_ = nullptr;
    QWidget* messagePage_ = nullptr;
    ToneLabel* message_ = nullptr;
    QPushButton* compute_ = nullptr;
    CombinationMap* map_ = nullptr;
    CombinationTable* table_ = nullptr;
    QWidget* left_ = nullptr;
    HoleBoardTarget* target_ = nullptr;
    QWidget* orderRow_ = nullptr;
    ToneLabel* order_ = nullptr;
    ToneLabel* uncertainty_ = nullptr;
    QPushButton* boltButton_ = nullptr;
    std::shared_ptr<const Car> estimatedFor_;
    QString estimate_;
};

}  // namespace bolthole
