// What the hole board is put together from, and the one selection between map and table.
#pragma once

#include <QObject>
#include <optional>

#include "widgets/board/choice_list.h"
#include "widgets/board/hole_board.h"

class QPushButton;
class QStackedWidget;

namespace bolthole {

class ChoiceMap;
class ChoiceTable;
class HoleBoardHeader;
class HoleBoardWanted;
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
    void fitTo(int height);
    [[nodiscard]] std::optional<QPointF> placeOf(std::uint64_t choice) const;
    [[nodiscard]] ChoiceMap& map() { return *map_; }

  private:
    void build();
    [[nodiscard]] QWidget* buildMessage();
    [[nodiscard]] QWidget* buildChoices();
    void connectParts();

    void refreshViews();
    void applyFilter();
    [[nodiscard]] bool showMessage();
    [[nodiscard]] const QString& estimateFor(const BoardState& state);
    void showOrder();
    void showButton();
    void showSure();

    void hover(const std::optional<std::size_t>& at);
    void select(const std::optional<std::size_t>& at, bool reveal);
    void forgetHidden();
    void showMarks(bool reveal);
    void bolt(std::size_t at);
    /// Why the choice can't be bolted to; empty: it can.
    [[nodiscard]] QString refuseBolt(const std::optional<std::size_t>& at) const;

    HoleBoard& board_;
    const BenchState* bench_ = nullptr;
    const BoardState* state_ = nullptr;
    ChoiceList list_;
    std::optional<HoleUse> selected_;
    std::optional<HoleUse> hovered_;
    std::optional<HoleUse> told_;  // last pointedAt()

    HoleBoardHeader* header_ = nullptr;
    QStackedWidget* pages_ = nullptr;
    QWidget* choicesPage_ = nullptr;
    QWidget* messagePage_ = nullptr;
    ToneLabel* message_ = nullptr;
    QPushButton* compute_ = nullptr;
    ChoiceMap* map_ = nullptr;
    ChoiceTable* table_ = nullptr;
    QWidget* wantedRow_ = nullptr;
    HoleBoardWanted* wanted_ = nullptr;
    QWidget* orderRow_ = nullptr;
    ToneLabel* order_ = nullptr;
    ToneLabel* sure_ = nullptr;
    QPushButton* boltButton_ = nullptr;
    std::shared_ptr<const Car> estimatedFor_;
    QString estimate_;
};

}  // namespace bolthole
