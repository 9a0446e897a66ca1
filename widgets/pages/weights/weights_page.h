// Scales, pads, driver, ballast and CG height: what was weighed and what it says.
#pragma once

#include <initializer_list>

#include "widgets/pages/fact_uncertainty.h"
#include "widgets/pages/work_page.h"

namespace bolthole {

class BallastSection;
class PlanPicture;
class PointRow;
class ToneLabel;
class WheelGrid;
struct CardWords;

/// Scales, pads, driver, ballast and CG height: what was weighed and what it says. A group that is not whole
/// says what it lacks; nothing is computed from half of it.
class WeightsPage : public WorkPage {
    Q_OBJECT
  public:
    explicit WeightsPage(QWidget* parent = nullptr);

  protected:
    [[nodiscard]] std::string shapeOf(const Car& car) const override;
    void fill(QWidget* content, QVBoxLayout* column) override;
    void refresh() override;
    [[nodiscard]] bool restsOn(Scope scope) const override {
        return scope == Scope::car || scope == Scope::ballast;
    }

  private:
    [[nodiscard]] Section* carSection(QWidget* content);
    [[nodiscard]] Section* cornerSection(QWidget* content);
    [[nodiscard]] Section* driverSection(QWidget* content);
    [[nodiscard]] Section* padSection(QWidget* content);
    [[nodiscard]] Section* rateSection(QWidget* content);
    [[nodiscard]] Section* ticketSection(QWidget* content);
    [[nodiscard]] Section* heightSection(QWidget* content);
    void addLift(Section* section);
    void addRows(Section* section, std::initializer_list<Field> fields, const QString& whenEmpty);
    void addBallast(QWidget* content, QVBoxLayout* column);
    void refreshFields();
    void showCards();
    void showUncomputable();

    WheelGrid* corners_ = nullptr;
    FactUncertainty uncertainty_;
    WheelGrid* other_ = nullptr;
    ToneLabel* otherTitle_ = nullptr;
    WheelGrid* pads_ = nullptr;
    PointRow* seat_ = nullptr;
    BallastSection* ballast_ = nullptr;
    PlanPicture* picture_;
    FactCard* weighedCard_;
    FactCard* ballastCard_;
    FactCard* heightCard_;
    FactCard* driverCard_;
    FactCard* padsCard_;
    FactCard* ticketCard_;
};

}  // namespace bolthole
