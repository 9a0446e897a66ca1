// A card of answers: what to do, what it comes to, how likely, and a button that does it.
#pragma once

#include <vector>

#include "widgets/kit/card.h"
#include "widgets/pages/target/target_words.h"

class QPushButton;
class QVBoxLayout;

namespace bolthole {

class ToneLabel;

/// Shows rows under a title. Rebuilds nothing while the number of rows stays.
class AnswerCard : public Card {
    Q_OBJECT
  public:
    explicit AnswerCard(const QString& title, QWidget* parent = nullptr);

    /// Shows the rows, and `note` under them; without rows `none` in their place.
    void showRows(std::vector<AnswerRow> rows, const QString& none, const QString& note = QString());
    [[nodiscard]] const std::vector<AnswerRow>& rows() const { return shown_; }

  signals:
    /// The button of a row was pressed.
    void taken(const bolthole::Edit& edit);

  private:
    struct Row {
        QWidget* box;
        ToneLabel* what;
        ToneLabel* chance;
        ToneLabel* figures;
        ToneLabel* remark;
        ToneLabel* miss;
        QPushButton* button;
    };
    void addRow();
    void showRow(const Row& row, const AnswerRow& answer);

    QVBoxLayout* column_;
    QVBoxLayout* list_;
    ToneLabel* none_;
    ToneLabel* note_;
    std::vector<Row> rows_;
    std::vector<AnswerRow> shown_;
};

}  // namespace bolthole
