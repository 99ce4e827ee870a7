// The browser is found at run time (src/shell/browser.ts), never downloaded at install time.
module.exports = { skipDownload: true }
