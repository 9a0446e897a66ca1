// What was seen of a pass, as the trade reads it, beside the launch that is computed for it.
#pragma once

#include <optional>
#include <vector>

#include "geometry/dynamics/launch_run.h"
#include "widgets/kit/card.h"
#include "widgets/pages/days/pass_book.h"

class QLabel;

namespace bolthole {

/// How the trade reads what was seen, one hint a line, each with "common practice, no source". Empty where
/// nothing was seen.
[[nodiscard]] QStringList readingsOf(const Pass& pass);
/// The launch of a pass's setup at the pass's launch rpm, computed; nothing where the setup lacks a number
/// for one.
[[nodiscard]] std::optional<LaunchRun> launchOf(const Car& setup, const Pass& pass);
/// The launch of a pass's setup at the pass's launch rpm in a sentence, or what is missing for one.
[[nodiscard]] QString computedLaunch(const Car& setup, const Pass& pass);

/// Shows one pass: the selected, else the last.
class SeenCard : public Card {
    Q_OBJECT
  public:
    /// `book` must outlive the card.
    explicit SeenCard(const PassBook& book, QWidget* parent = nullptr);

    /// Shows the pass of a row; nothing: the card has none to show and hides.
    void showPass(const std::optional<std::size_t>& row);

  private:
    const PassBook& book_;
    QLabel* heading_;
    QLabel* hints_;
    QLabel* computed_;
};

}  // namespace bolthole
