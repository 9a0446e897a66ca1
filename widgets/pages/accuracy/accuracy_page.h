// The uncertainty of the figures, and which number to measure again.
#pragma once

#include <optional>

#include "widgets/pages/work_page.h"
#include "widgets/words/accuracy_reading.h"

class QComboBox;

namespace bolthole {

class UncertaintyBar;
class AccuracyTable;
class ToneLabel;

/// Left: what was measured with. Right: the numbers, ranked by what they add to the uncertainty of a figure.
class AccuracyPage : public WorkPage {
    Q_OBJECT
  public:
    explicit AccuracyPage(QWidget* parent = nullptr);

    /// The own ± of every measured number has a place here.
    [[nodiscard]] bool hasField(const FieldId& id) const override;
    void focusField(const FieldId& id) override;

    /// What the page shows; for tests.
    [[nodiscard]] const AccuracyReading& reading() const { return reading_; }

  protected:
    [[nodiscard]] std::string shapeOf(const Car& car) const override;
    void fill(QWidget* content, QVBoxLayout* column) override;
    void refresh() override;

  private:
    void buildCombination(QVBoxLayout* column, QWidget* parent);
    void buildTable(QVBoxLayout* column, QWidget* parent);
    void addTool(Field field, MeasuringTool tool, Section* section);
    [[nodiscard]] Section* makeDatums(QWidget* content);
    void showDefaults();
    void showReading(bool keepsNumber);
    void showBar();

    AccuracyReading reading_;
    TraceUncertainty uncertainty_;
    std::optional<FieldId> number_;  // whose ± stands in the bar, where the table does not hold it
    std::vector<std::pair<MeasuringTool, NumberField*>> tools_;
    ToneLabel* message_;
    QComboBox* figure_ = nullptr;
    QComboBox* place_ = nullptr;
    ToneLabel* sentence_ = nullptr;
    ToneLabel* note_ = nullptr;
    AccuracyTable* table_ = nullptr;
    UncertaintyBar* bar_ = nullptr;
};

}  // namespace bolthole
