// The driveshaft through travel: joint angles, speed swing, plunge, and the pinion angle that cancels.
#pragma once

#include <memory>

#include "widgets/pages/driveline/driveline_reading.h"
#include "widgets/pages/fact_uncertainty.h"
#include "widgets/pages/work_page.h"

namespace bolthole {

class Card;
class CurveChart;
class DrivelinePicture;
class DrivelineSection;
class Section;
class ToneLabel;
class TravelSlider;

/// The driveshaft through travel: joint angles, speed swing, plunge, and the pinion angle that cancels.
class DrivelinePage : public WorkPage {
    Q_OBJECT
  public:
    explicit DrivelinePage(QWidget* parent = nullptr);
    ~DrivelinePage() override;

    /// What the page shows; for tests.
    [[nodiscard]] const DrivelineReading& reading() const { return reading_; }

  signals:
    /// The person moved the cursor: travel, m. The page takes the cursor from its state when the call
    /// returns.
    void cursorMoved(double travel);

  protected:
    [[nodiscard]] std::string shapeOf(const Car& car) const override;
    void fill(QWidget* content, QVBoxLayout* column) override;
    void refresh() override;
    void showEvent(QShowEvent* event) override;

  private:
    void buildPicture();
    void buildCurves();
    void moveCursor(double travel);
    void showCursor();
    void showCards();
    void showMessage();
    [[nodiscard]] Section* carrierSection(QWidget* content);
    [[nodiscard]] Section* powerSection(QWidget* content);
    [[nodiscard]] Section* slipSection(QWidget* content);
    [[nodiscard]] QString carrierWords() const;

    DrivelineReading reading_;
    FactUncertainty uncertainty_;
    DrivelineSection* joints_ = nullptr;  // the fields' own group, built anew with them
    ToneLabel* carrierTitle_ = nullptr;
    ToneLabel* carrierNote_ = nullptr;
    ToneLabel* message_;
    ToneLabel* hint_ = nullptr;  // while there is no driveline
    Card* pictureCard_ = nullptr;
    DrivelinePicture* picture_ = nullptr;
    QWidget* curvesBox_ = nullptr;
    ToneLabel* curvesKey_ = nullptr;
    TravelSlider* slider_ = nullptr;
    CurveChart* curves_ = nullptr;
    FactCard* ride_;
    FactCard* travel_;
    FactCard* speed_;
    FactCard* plunge_;
    FactCard* pinion_;
};

}  // namespace bolthole
