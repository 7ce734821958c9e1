// SPDX-License-Identifier: MIT
#include "ui/document/background.h"

#include <QCoreApplication>
#include <QPointer>

#include <limits>

namespace stillbay::ui {

QThreadPool& jobThreads()
{
    static QPointer<QThreadPool> threads;  // the application's own child: it ends before that does
    if (!threads) {
        threads = new QThreadPool(QCoreApplication::instance());
        threads->setMaxThreadCount(std::numeric_limits<int>::max());
    }
    return *threads;
}

}  // namespace stillbay::ui
