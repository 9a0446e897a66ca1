// The style sheet on the parts of the program's windows.
#pragma once

#include <QHash>
#include <QObject>
#include <QString>

class QWidget;

namespace bolthole {

/// Has every part of a window wear one style sheet, and changes it: at once on the parts that are seen, on
/// the others when they are shown. A sheet of the whole application would have every widget of every page
/// styled and measured anew when the theme changes, 1.5 s of work.
///
/// Windows, dialogs, menus and tips wear it by themselves, but for a main window: what stands in it is for
/// its maker to name.
class Dressing : public QObject {
    Q_OBJECT
  public:
    static Dressing& instance();

    /// From now on that part and all in it wear the sheet. It must not stand in another such part.
    void wear(QWidget* part);
    /// Another sheet for all.
    void change(const QString& sheet);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    Dressing();
    void put(QWidget* part);
    [[nodiscard]] bool isInPart(const QWidget* widget) const;

    QString sheet_;
    int version_ = 0;
    QHash<const QObject*, int> parts_;  // and which version of the sheet they wear
};

}  // namespace bolthole
