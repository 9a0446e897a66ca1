// From the window to paper: preview, printer and PDF file, for any of the program's papers.
#pragma once

#include <QObject>
#include <QPageLayout>
#include <QString>
#include <functional>
#include <memory>
#include <vector>

#include "widgets/papers/kit/printed_sheets.h"

class QWidget;

namespace bolthole {

/// A page a paper can be laid out for.
struct PaperChoice {
    QString name;  ///< "A4, 210 × 297 mm"
    QPageLayout page;
};

/// What is to be printed.
struct PaperJob {
    QString what;   ///< "wall chart"; titles and messages are made of it
    QString title;  ///< the car's
    std::vector<PaperChoice> papers;
    int paper = 0;  ///< the one to begin with
    /// Lays it out for a page, also for one that a printer's dialog gave.
    std::function<std::unique_ptr<PrintedSheets>(const QPageLayout& page)> layOut;
};

/// Shows the sheets, with a choice of papers and buttons to print and to save them. Returns when the person
/// closes it.
void previewPaper(QWidget* parent, const PaperJob& job);

/// Asks for a printer and prints on it, laid out anew for the page the printer has, turned as `page` is.
/// False: given up, or failed, which a message box then said.
bool printPaper(QWidget* parent, const PaperJob& job, const QPageLayout& page);

/// Writes a PDF, whole or not at all; asks where to if `fileName` is empty. False: given up, or failed, which
/// a message box then said.
bool savePaper(QWidget* parent, const PaperJob& job, const QPageLayout& page, QString fileName);

/// Where every file that a paper was saved to is told, for whoever shows it to the person.
class PaperNews : public QObject {
    Q_OBJECT
  public:
    [[nodiscard]] static PaperNews& instance();

  signals:
    void saved(const QString& words);  ///< "Wall chart saved: wagon.pdf, in /home/me/car"

  private:
    PaperNews() = default;
    friend void tellSaved(const QString& what, const QString& fileName);
};

/// Tells that `what` ("wall chart") was saved in that file.
void tellSaved(const QString& what, const QString& fileName);

/// A warning in a message box titled after what is printed.
void sayOfPaper(QWidget* parent, const QString& what, const QString& message);

}  // namespace bolthole
