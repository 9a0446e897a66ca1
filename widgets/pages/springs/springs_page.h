// Springs, shocks, stops and straps: wheel rates, and what runs out first.
#pragma once

#include <vector>

#include "widgets/curves/curve_chart.h"
#include "widgets/pages/fact_uncertainty.h"
#include "widgets/pages/springs/spring_findings.h"
#include "widgets/pages/springs/springs_picture.h"
#include "widgets/pages/springs/starting_spring.h"
#include "widgets/pages/work_page.h"

class QAbstractButton;

namespace bolthole {

class CalmCombo;
class SpringSection;

/// Fields of every part at left. At right what ends the travel, the parts in a picture and in curves, the
/// rate they make at the wheels, and the figures of each.
class SpringsPage : public WorkPage {
    Q_OBJECT
  public:
    explicit SpringsPage(QWidget* parent = nullptr);

    [[nodiscard]] const SpringFindings& findings() const { return found_; }
    [[nodiscard]] SpringsPicture& picture() const { return *picture_; }
    [[nodiscard]] CurveChart& curves() const { return *curves_; }
    /// Travel at which the picture stands, m.
    [[nodiscard]] double travel() const { return travel_; }

  protected:
    [[nodiscard]] std::string shapeOf(const Car& car) const override;
    void fill(QWidget* content, QVBoxLayout* column) override;
    void refresh() override;
    [[nodiscard]] bool restsOn(Scope) const override { return true; }
    void showEvent(QShowEvent* event) override;

  private:
    void buildResults();
    QWidget* buildFirstOut();
    QWidget* buildPicture();
    QWidget* buildCurves();
    QWidget* buildRates();
    [[nodiscard]] QWidget* addButton(QWidget* parent);
    void addSection(int item, QWidget* content, QVBoxLayout* column);
    void addPart(PartKind kind);
    void removePart(int item);
    void choosePart(int item);
    void setTravel(double travel);

    void refreshSections();
    void showFirstOut();
    void showChosen();
    void showParts();
    void showFacts();
    void showPartCards(const CardFacts& facts);
    void cut(Field field, const TravelEnd& end);

    std::vector<SpringSection*> sections_;
    std::vector<int> folded_;
    SpringFindings found_;
    FactUncertainty uncertainty_;
    double travel_ = 0;
    double benchTravel_ = 0;  // the bench's cursor when it was last taken over
    int chosen_ = 0;

    struct PartCard {
        QString title;
        FactCard* card;
    };
    ToneLabel* hint_ = nullptr;
    ToneLabel* problem_ = nullptr;
    FactCard* firstOut_ = nullptr;
    QAbstractButton* cutBump_ = nullptr;
    QAbstractButton* cutDroop_ = nullptr;
    QWidget* pictureCard_ = nullptr;
    SpringsPicture* picture_ = nullptr;
    QWidget* curvesCard_ = nullptr;
    CalmCombo* partChoice_ = nullptr;
    CurveChart* curves_ = nullptr;
    FactCard* rates_ = nullptr;
    QVBoxLayout* partColumn_ = nullptr;
    std::vector<PartCard> partCards_;
};

}  // namespace bolthole
