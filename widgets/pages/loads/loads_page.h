// What a launch or a stop does: tire loads, attitude, roll, and what every link carries.
#pragma once

#include "geometry/statics/launch_case.h"
#include "widgets/pages/fact_uncertainty.h"
#include "widgets/pages/work_page.h"

namespace bolthole {

class CombinationLoadTable;
class CurveChart;
class LoadsPicture;
class LinkLoadTable;
class MissingList;
class Section;
class ToneLabel;

/// What a launch or a stop does: tire loads, attitude, roll, and what every link carries.
class LoadsPage : public WorkPage {
    Q_OBJECT
  public:
    explicit LoadsPage(QWidget* parent = nullptr);

    /// What is shown, for tests.
    [[nodiscard]] const LaunchCase& shown() const { return case_; }
    [[nodiscard]] CombinationLoadTable& combinations() { return *combinations_; }

  protected:
    [[nodiscard]] std::string shapeOf(const Car& car) const override;
    void fill(QWidget* content, QVBoxLayout* column) override;
    void refresh() override;
    [[nodiscard]] bool restsOn(Scope) const override { return true; }

  private:
    [[nodiscard]] Section* launchSection(QWidget* parent);
    [[nodiscard]] Section* driveSection(QWidget* parent);
    [[nodiscard]] Section* loadSection(QWidget* parent);
    [[nodiscard]] Section* ratingSection(QWidget* parent);
    [[nodiscard]] Section* brakeSection(QWidget* parent);
    void addRow(Section& section, Field field, const QString& whenEmpty);
    void buildCards();
    void buildLinkCards();
    void showFacts();
    void showLinks();
    void showCombinations();
    void showNothing();

    LaunchCase case_;
    FactUncertainty uncertainty_;
    ToneLabel* problem_;
    MissingList* missing_;
    LoadsPicture* picture_;
    FactCard* launch_;
    FactCard* attitude_;
    FactCard* roll_;
    FactCard* braking_;
    FactCard* links_;
    LinkLoadTable* table_;
    CurveChart* curves_;
    FactCard* combinationCard_;
    CombinationLoadTable* combinations_;
};

}  // namespace bolthole
