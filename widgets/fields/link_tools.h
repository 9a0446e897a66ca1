// What can be done to a link as a whole in the car sheet, and the button that adds one.
#pragma once

#include <QPushButton>
#include <QWidget>

#include "widgets/fields/sheet_hub.h"
#include "widgets/kit/sheet_parts.h"

class QMenu;

namespace bolthole {

/// A quiet row of one link: what it is, left and right set apart or joined, kind, side and role, removal.
class LinkTools : public QWidget {
    Q_OBJECT
  public:
    LinkTools(SheetHub& hub, int link, QWidget* parent = nullptr);

    /// Brings words and buttons up to date.
    void refresh();

  private:
    void fillMenu(QMenu* menu);
    void addKinds(QMenu* menu);
    void addSides(QMenu* menu);
    void addRoles(QMenu* menu);
    void turnInto(LinkKind kind);
    void changeTo(const Link& changed);
    void setApart();
    void join();
    void remove();
    [[nodiscard]] const Link& link() const;

    SheetHub& hub_;
    int link_;
    ToneLabel* words_;
    QAbstractButton* apart_;
    QAbstractButton* join_;
    QAbstractButton* change_;
    QAbstractButton* remove_;
};

/// Adds a link that cars usually have, with starting numbers.
class AddLinkButton : public QPushButton {
    Q_OBJECT
  public:
    explicit AddLinkButton(SheetHub& hub, QWidget* parent = nullptr);

  private:
    void add(int pattern);
    SheetHub& hub_;
};

}  // namespace bolthole
