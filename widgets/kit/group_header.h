// A table's header of two lines: groups of columns above, columns below.
#pragma once

#include <QHeaderView>
#include <QStringList>

namespace bolthole {

/// Every group has as many columns. The group's name stays in view while any of its columns is; a hairline
/// parts the groups.
class GroupHeader : public QHeaderView {
    Q_OBJECT
  public:
    GroupHeader(int columnsInGroup, QWidget* parent);

    /// Names of the groups, from the left.
    void setGroups(const QStringList& names);
    [[nodiscard]] const QStringList& groups() const { return groups_; }

    /// The first column of the group that is not hidden; -1: all are.
    [[nodiscard]] int firstShown(int group) const;
    /// px that the group's name takes whole.
    [[nodiscard]] int nameWidth(int group) const;

    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override;

  private:
    [[nodiscard]] QRect groupRect(int group, const QRect& section) const;

    int columns_;
    QStringList groups_;
};

}  // namespace bolthole
