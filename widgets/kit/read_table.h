// A table to read and copy from: no editing, keyboard and Ctrl+C, as tall as its rows unless told otherwise.
#pragma once

#include <QTableWidget>

namespace bolthole {

/// Makes a table one that is read and copied from, cell by cell or in blocks, by mouse and keys, and says so
/// to who hears it. The copying is the table's own.
void makeReadOnly(QTableWidget& table);

/// Makes a table one whose rows are chosen one at a time, by mouse and keys, and not edited.
void chooseRows(QTableView& table);

/// A table of texts. Numbers stand to the right, words to the left. Ctrl+C copies what is selected, or
/// everything, as tab-separated text with its headings.
class ReadTable : public QTableWidget {
    Q_OBJECT
  public:
    /// `name`: for screen readers.
    ReadTable(const QString& name, const QStringList& headings, QWidget* parent = nullptr);

    /// The most rows shown without scrolling.
    void setMostRows(int rows);
    void setRows(int rows);
    /// `isText`: words, set to the left.
    void setCell(int row, int column, const QString& text, bool isText = false);
    /// Marks a whole row, or a cell as wrong; the text has to say so too.
    void setStrong(int row, bool strong);
    void setProblem(int row, int column, bool problem);
    /// Fits columns and height to what was set.
    void fit();

  protected:
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void copyCells() const;
    int mostRows_ = 40;
};

}  // namespace bolthole
