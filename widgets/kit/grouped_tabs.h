// A row of tabs in groups.
#pragma once

#include <QTabBar>
#include <vector>

namespace bolthole {

/// Tabs with a short line in front of each that begins a group. The titles and the order say what belongs
/// together; the line only helps the eye.
class GroupedTabs : public QTabBar {
    Q_OBJECT
  public:
    using QTabBar::QTabBar;

    /// The next tab added begins a group.
    void beginGroup() { firsts_.push_back(count()); }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    std::vector<int> firsts_;
};

}  // namespace bolthole
