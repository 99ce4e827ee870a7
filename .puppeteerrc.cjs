// The browser is found at run time (src/shell/browser/), never downloaded at install time.
module.exports = { skipDownload: true }
