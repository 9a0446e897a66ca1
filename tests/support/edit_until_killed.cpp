// Edits and saves a car in the real window until it is killed: edit_until_killed FILE SEED. Edit number n
// makes the wheelbase 2000 + n/100 mm. Says on standard output "n milliseconds" once an edit is done, on the
// system's monotonic clock.
#include <unistd.h>

#include <QApplication>
#include <QTimer>
#include <chrono>
#include <cstdlib>
#include <random>
#include <string>

#include "app/window/main_window.h"

int main(int argc, char** argv) {
    const QApplication app(argc, argv);
    bolthole::MainWindow window(bolthole::Settings{});
    window.openFile(QString::fromLocal8Bit(argv[1]));
    window.show();
    std::mt19937 random(static_cast<unsigned>(std::atoi(argv[2])));
    int number = 0;
    QTimer timer;
    timer.setSingleShot(true);
    QObject::connect(&timer, &QTimer::timeout, [&] {
        bolthole::Document& document = window.document();
        if (random() % 12 == 0) {
            if (!document.save(document.fileName()).saved()) {
                std::abort();
            }
        } else {
            ++number;
            const double wheelbase = (2000.0 + number / 100.0) / 1000.0;
            const bolthole::SetNumber edit{{.field = bolthole::Field::wheelbase}, wheelbase};
            if (!document.apply(edit, bolthole::EditPhase::whole, {}).isEmpty()) {
                std::abort();
            }
            const auto now = std::chrono::steady_clock::now().time_since_epoch();
            const std::string line =
                std::to_string(number) + ' ' +
                std::to_string(std::chrono::duration_cast<std::chrono::milliseconds>(now).count()) + '\n';
            if (::write(STDOUT_FILENO, line.data(), line.size()) < 0) {
                std::abort();
            }
        }
        timer.start(static_cast<int>(random() % 40));
    });
    timer.start(0);
    return QApplication::exec();
}
