// Finds a hole's fore-aft figure from the taped center-to-center length, both heights and sideways figures.
#pragma once

#include <QWidget>

#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/sheet_parts.h"

class QPushButton;

namespace bolthole {

/// A small form inside a link's group. Shows what comes out before anything is changed; Apply moves the hole
/// in use at the chosen end as one edit.
class ForwardFinder : public QWidget {
    Q_OBJECT
  public:
    ForwardFinder(SheetHub& hub, int link, QWidget* parent = nullptr);

    /// Opens the form: takes the written length, if any, and enters the length field.
    void open();
    /// Works the result out anew: the holes or the units may have changed.
    void refresh();

  private:
    void apply();
    [[nodiscard]] End sought() const;
    [[nodiscard]] const Link& link() const;
    [[nodiscard]] QString resultWords(const ForwardFigure& figure) const;

    SheetHub& hub_;
    int link_;
    NumberField* length_;
    CalmCombo* end_;
    ToneLabel* result_;
    ToneLabel* refusal_;
    QPushButton* apply_;
    std::optional<double> typed_;  // SI; kept through unit changes
    std::optional<double> found_;  // x of the hole sought, m
};

}  // namespace bolthole
