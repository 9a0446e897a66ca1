// Two setups against each other, as far as their passes tell.
#pragma once

#include <array>
#include <optional>

#include "widgets/kit/card.h"
#include "widgets/pages/days/pass_book.h"
#include "widgets/pages/days/pass_measures.h"

class QComboBox;
class QLabel;

namespace bolthole {

class ToneLabel;

/// What a comparison comes to in a person's words.
struct CompareWords {
    QString figure{};      ///< "−0.027 s ± 0.014"; empty where there is none
    QString verdict{};     ///< "clearly quicker", "can't tell these apart, 3 more passes each would"
    bool isClear = false;  ///< the verdict is that they differ
    QStringList lines{};   ///< what changed, how often, on what ground, trend
};
/// The second of two runs against the first, both places in RunList::runs.
[[nodiscard]] CompareWords compareInWords(const PassBook& book, MeasureReader& reader, std::size_t first,
                                          std::size_t second);

/// Compares the run of the last pass with the one before it, or two that are chosen.
class CompareCard : public Card {
    Q_OBJECT
  public:
    /// `book` must outlive the card.
    explicit CompareCard(const PassBook& book, QWidget* parent = nullptr);

    /// The book has changed. What was chosen stays chosen while it is there.
    void refresh();
    [[nodiscard]] const CompareWords& words() const { return words_; }

  private:
    void fillBoxes();
    void chooseUsual();
    void show();

    const PassBook& book_;
    MeasureReader reader_;
    std::optional<RunWith> first_;   // chosen by the person
    std::optional<RunWith> second_;  // and what is held against it
    CompareWords words_;
    QComboBox* secondBox_;
    QComboBox* firstBox_;
    QLabel* figure_;
    QLabel* verdict_;
    std::array<ToneLabel*, 5> lines_{};  // as many as CompareWords may have
};

}  // namespace bolthole
