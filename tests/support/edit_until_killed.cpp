// Edits and saves a car in the real window until it is killed: edit_until_killed FILE SEED. Edit number n
// makes the wheelbase 2000 + n/100 mm, or every fourth a pass of that number, with its setup. Says on
// standard output "n milliseconds" once an edit is done, on the system's monotonic clock.
#include <unistd.h>

#include <QApplication>
#include <QTimer>
#include <chrono>
#include <cstdlib>
#include <random>
#include <string>

#include "app/window/main_window.h"

namespace {

bolthole::Edit editOf(int number) {
    if (number % 4 == 0) {
        bolthole::Pass pass;
        pass.number = number;
        pass.date = "2026-11-28";
        pass.sixtyFoot = 2 + number / 10'000.0;
        return bolthole::AddPass{pass};
    }
    return bolthole::SetNumber{{.field = bolthole::Field::wheelbase}, (2000.0 + number / 100.0) / 1000.0};
}

}  // namespace

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
            const bolthole::Edit edit = editOf(number);
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
