// The axle in roll: roll center and its migration, roll axis, roll steer, sideways shift, bind.
#pragma once

#include "widgets/pages/fact_uncertainty.h"
#include "widgets/pages/roll/roll_reading.h"
#include "widgets/pages/work_page.h"

class QHBoxLayout;

namespace bolthole {

class Card;
class CurveChart;
class RollAxisPicture;
class RollPicture;
class ToneLabel;
class TravelSlider;

/// The axle in roll. Its roll cursor is its own; the travel cursor is the bench's.
class RollPage : public WorkPage {
    Q_OBJECT
  public:
    explicit RollPage(QWidget* parent = nullptr);
    ~RollPage() override;

    /// What the page shows; for tests.
    [[nodiscard]] const RollReading& reading() const { return reading_; }
    [[nodiscard]] const RollFigures& shownRoll() const { return shown_; }

  signals:
    /// The person moved the travel cursor: m. The page takes the cursor from its state when the call returns.
    void cursorMoved(double travel);

  protected:
    [[nodiscard]] std::string shapeOf(const Car& car) const override;
    void fill(QWidget* content, QVBoxLayout* column) override;
    void refresh() override;
    [[nodiscard]] bool restsOn(Scope scope) const override {
        return scope == Scope::car || scope == Scope::hole || scope == Scope::link;
    }
    void showEvent(QShowEvent* event) override;

  private:
    void buildPictures();
    void buildRollCurves();
    void buildTravelCurves();
    void moveRoll(double roll);
    void moveTravel(double travel);
    void showRoll();
    void showTravel();
    void showCurves();
    void showCurveWords();
    void showCards();
    void showMessage();

    RollReading reading_;
    FactUncertainty uncertainty_;
    double roll_;  // rad, where the cursor stands
    RollFigures shown_;
    ToneLabel* message_;
    ToneLabel* rollWords_ = nullptr;
    ToneLabel* travelWords_ = nullptr;
    QWidget* rollBox_ = nullptr;  // all that needs an axle held in roll
    RollPicture* picture_ = nullptr;
    RollAxisPicture* axisPicture_ = nullptr;
    CurveChart* rollCurves_ = nullptr;
    TravelSlider* slider_ = nullptr;
    CurveChart* travelCurves_ = nullptr;
    FactCard* center_ = nullptr;
    FactCard* shift_ = nullptr;
    FactCard* bind_ = nullptr;
    FactCard* sides_ = nullptr;
    FactCard* rods_ = nullptr;
};

}  // namespace bolthole
