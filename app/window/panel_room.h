// How high the panel below the bench is: each of its tabs has a height of its own.
#pragma once

#include <QHash>
#include <QObject>

class QSplitter;
class QTabWidget;

namespace bolthole {

/// Gives the panel the height that the chosen tab was left at. One that was never shown gets what it asks
/// for, if it is to have it and the panel is lower; the person may drag it lower again.
class PanelRoom : public QObject {
    Q_OBJECT
  public:
    /// `split`: bench above, panel with `tabs` below; both must outlive this.
    PanelRoom(QSplitter& split, QTabWidget& tabs);

    /// This tab gets the height of its size hint when it is first shown.
    void giveHint(QWidget* tab);
    /// Back to the height of the first tab, as the window is opened with: once, before the splitter is saved.
    void leave();

  private:
    void change(int index);
    [[nodiscard]] int height() const;
    void setHeight(int height);

    QSplitter& split_;
    QTabWidget& tabs_;
    int last_ = 0;
    QHash<int, int> heights_;  // px, by tab
    QHash<int, QWidget*> hinted_;
};

}  // namespace bolthole
