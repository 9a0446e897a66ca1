// The figures of a launch beside those of the baseline.
#pragma once

#include <array>
#include <optional>

#include "geometry/trials/launch_uncertainty.h"
#include "widgets/kit/card.h"
#include "widgets/kit/sheet_parts.h"
#include "widgets/pages/launch/launch_film.h"

class QGridLayout;

namespace bolthole {

/// A row a figure: what it is, its uncertainty, by how much it differs from the baseline's and its
/// uncertainty, and the baseline's. Rebuilds nothing.
class LaunchFiguresCard : public Card {
    Q_OBJECT
  public:
    explicit LaunchFiguresCard(QWidget* parent = nullptr);

    /// Shows the figures without saying their uncertainty; `baseline` may be null.
    void showFilms(const LaunchFilm& film, const LaunchFilm* baseline, Units units);
    /// Says their uncertainty, of the films shown last; nothing: not known, or not to be seen.
    void showUncertainties(const std::optional<LaunchUncertainties>& uncertainties);

    /// What a row shows, for tests.
    struct Shown {
        QString value;
        QString plusMinus;
        QString difference;
        QString baseline;
    };
    [[nodiscard]] Shown shown(LaunchFigure figure) const;

  private:
    struct Row {
        ToneLabel* label;
        ToneLabel* value;
        ToneLabel* plusMinus;
        ToneLabel* difference;
        ToneLabel* baseline;
    };
    void addRow(QGridLayout& grid, LaunchFigure figure, const QString& label, const QString& toolTip);
    void showRow(LaunchFigure figure);
    [[nodiscard]] QString differenceWords(LaunchFigure figure, double change) const;
    [[nodiscard]] QString uncertaintyWords(LaunchFigure figure, double value) const;
    [[nodiscard]] std::string rangeOf(LaunchFigure figure, const LaunchFigureUncertainty& uncertainty) const;
    [[nodiscard]] QString valueWords(LaunchFigure figure, const std::optional<double>& value,
                                     bool withUnits) const;
    Row& row(LaunchFigure figure) { return rows_[static_cast<std::size_t>(figure)]; }

    std::array<Row, kLaunchFigures> rows_{};
    ToneLabel* heading_;
    ToneLabel* baselineHeading_;
    ToneLabel* note_;
    LaunchReading reading_;
    std::optional<LaunchReading> baseline_;
    std::optional<LaunchUncertainties> uncertainties_;
    double leastLoadAt_ = 0;
    bool ran_ = false;  // to 60 ft and past the least time: what did not happen never does
    Units units_ = Units::inch;
};

}  // namespace bolthole
