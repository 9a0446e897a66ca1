// What tests of the program's papers share: demo cars, poppler's programs, message boxes, the preview.
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QMessageBox>
#include <QProcess>
#include <QStringList>
#include <QTimer>
#include <functional>
#include <string>

#include "app/carfile/car_file.h"

namespace bolthole::test {

inline Car demoCar(const char* name) {
    const ReadResult read = readCarFile(std::string(BOLTHOLE_DEMO_DIR "/") + name + ".bolt.json");
    EXPECT_TRUE(read.loaded);
    return read.loaded ? read.loaded->car : Car{};
}

/// What a program prints.
inline QString output(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished(30'000) && process.exitCode() == 0) << qPrintable(program);
    return QString::fromUtf8(process.readAllStandardOutput());
}

/// Closes the message box that comes up next and keeps what it said.
class BoxCloser {
  public:
    BoxCloser() {
        QObject::connect(&timer_, &QTimer::timeout, [this] {
            if (auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget())) {
                said_ = box->text();
                box->accept();
            }
        });
        timer_.start(10);
    }
    [[nodiscard]] QString said() const { return said_; }

  private:
    QTimer timer_;
    QString said_;
};

/// Opens a preview by `open`, goes through its papers and closes it: "sheet 1 of N" of each.
inline QStringList sheetsPreviewed(const std::function<void()>& open) {
    QStringList seen;
    QTimer::singleShot(0, [&] {
        QWidget* dialog = QApplication::activeModalWidget();
        ASSERT_NE(dialog, nullptr);
        auto* papers = dialog->findChild<QComboBox*>();
        ASSERT_NE(papers, nullptr);
        EXPECT_TRUE(papers->currentText().startsWith("Letter"));
        for (int paper = 0; paper < papers->count(); ++paper) {
            papers->setCurrentIndex(paper);
            for (const QLabel* label : dialog->findChildren<QLabel*>()) {
                if (label->text().startsWith("sheet ")) {
                    seen << label->text();
                }
            }
        }
        dialog->close();
    });
    open();
    return seen;
}

}  // namespace bolthole::test
