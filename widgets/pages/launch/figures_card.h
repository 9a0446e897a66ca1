// The figures of a launch beside those of the before.
#pragma once

#include <array>
#include <optional>

#include "geometry/trials/launch_spread.h"
#include "widgets/kit/card.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/pages/launch/launch_film.h"

class QGridLayout;

namespace bolthole {

/// A row a figure: what it is, how sure, by how much it differs from the before's and how sure that is, and
/// the before's. Rebuilds nothing.
class LaunchFiguresCard : public Card {
    Q_OBJECT
  public:
    explicit LaunchFiguresCard(QWidget* parent = nullptr);

    /// Shows the figures without saying how sure they are; `before` may be null.
    void showFilms(const LaunchFilm& film, const LaunchFilm* before, Units units);
    /// Says how sure they are, of the films shown last; nothing: not known, or not to be seen.
    void showSpreads(const std::optional<LaunchSpreads>& spreads);

    /// What a row shows, for tests.
    struct Shown {
        QString value;
        QString sure;
        QString difference;
        QString before;
    };
    [[nodiscard]] Shown shown(LaunchFigure figure) const;

  private:
    struct Row {
        ToneLabel* label;
        ToneLabel* value;
        ToneLabel* sure;
        ToneLabel* difference;
        ToneLabel* before;
    };
    void addRow(QGridLayout& grid, LaunchFigure figure, const QString& label, const QString& toolTip);
    void showRow(LaunchFigure figure);
    [[nodiscard]] QString differenceWords(LaunchFigure figure, double change) const;
    [[nodiscard]] QString sureWords(LaunchFigure figure, double value) const;
    [[nodiscard]] std::string rangeOf(LaunchFigure figure, const LaunchFigureSpread& spread) const;
    [[nodiscard]] QString valueWords(LaunchFigure figure, const std::optional<double>& value,
                                     bool withUnits) const;
    Row& row(LaunchFigure figure) { return rows_[static_cast<std::size_t>(figure)]; }

    std::array<Row, kLaunchFigures> rows_{};
    ToneLabel* heading_;
    ToneLabel* beforeHeading_;
    ToneLabel* note_;
    LaunchReading reading_;
    std::optional<LaunchReading> before_;
    std::optional<LaunchSpreads> spreads_;
    double leastLoadAt_ = 0;
    bool ran_ = false;  // to 60 ft and past the least time: what did not happen never does
    Units units_ = Units::inch;
};

}  // namespace bolthole
