// The painted parts of a FitCard: how much of a number the passes told, and predicted against run.
#pragma once

#include <QWidget>
#include <vector>

#include "geometry/fit/launch_fit.h"
#include "widgets/curves/curve_chart.h"

namespace bolthole {

/// A bar from 0 to 100 %, a thin one beside a row of text.
class ShareBar : public QWidget {
    Q_OBJECT
  public:
    explicit ShareBar(QWidget* parent = nullptr);

    /// `percent` is held within 0 and 100.
    void showShare(double percent);
    [[nodiscard]] QSize sizeHint() const override { return {44, 16}; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    double percent_ = 0;
};

/// Each pass as it was predicted from the others, across with its ± at 95 %, against as it was run, up; the
/// diagonal is where both agree. A pass that the fit took for a mistake is hollow, one outside its ± is
/// a diamond.
class PredictionPlot : public CurveChart {
    Q_OBJECT
  public:
    explicit PredictionPlot(QWidget* parent = nullptr);

    /// `names`: what each is called, for its tool tip.
    void showPasses(const std::vector<FittedPass>& passes, const std::vector<QString>& names);
};

}  // namespace bolthole
