// The top of the hole board: how many combinations there are, what is varied, how lengths are treated, the
// filter.
#pragma once

#include <QWidget>

#include "widgets/board/combination_list.h"

class QBoxLayout;
class QCheckBox;
class QLineEdit;

namespace bolthole {

class CalmCombo;
class CutLabel;
class ToneLabel;

/// One row, or two where one would be too narrow.
class HoleBoardHeader : public QWidget {
    Q_OBJECT
  public:
    explicit HoleBoardHeader(QWidget* parent = nullptr);

    /// Shows the board; `shown` combinations pass the filter.
    void showBoard(const BoardState& board, bool hasTarget, std::size_t shown);
    /// How many pass the filter now.
    void showCount(const BoardState& board, std::size_t shown);
    [[nodiscard]] CombinationFilter filter() const;

    [[nodiscard]] QSize minimumSizeHint() const override;

  signals:
    void lengthsChosen(bolthole::LengthTreatment lengths);
    void scopeChosen(const bolthole::CombinationScope& scope);
    void filterChanged();

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void buildCounts();
    void buildScope();
    void buildLengths();
    void buildFilter();
    void showLengths(const BoardState& board);
    void showScope(const BoardState& board);
    void fold();

    QBoxLayout* layout_;
    QWidget* first_;   // counts and scope
    QWidget* second_;  // lengths and filter
    CutLabel* counts_;
    QCheckBox* sides_;
    QCheckBox* crosswise_;
    CalmCombo* lengths_;
    QLineEdit* text_;
    QCheckBox* noProblems_;
    QCheckBox* targetOnly_;
    std::shared_ptr<const Car> car_;  // the scope was worked out for
    bool showing_ = false;            // the board is shown, not changed
};

/// "1,234".
[[nodiscard]] QString groupedNumber(std::uint64_t number);

}  // namespace bolthole
