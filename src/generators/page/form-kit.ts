// What the offline forms for phones share, as text: plain browser JavaScript without a build step. It writes only text into the
// page (never markup), keeps entries in the browser's storage, and hands the finished text back. Run under test in a browser.

/** A whole script: the kit, then the form's own part, in one scope of their own. */
export function formScript(own: string): string {
  return `'use strict';\n(function () {\n${kit}${own}})();\n`;
}

const kit = String.raw`  // ---------------------------------------------------------------- what every offline form needs

  function el(tag, settings, children) {
    var node = document.createElement(tag);
    Object.keys(settings || {}).forEach(function (name) {
      var value = settings[name];
      if (name === 'tap') node.addEventListener('click', value);
      else if (name === 'typed') node.addEventListener('input', function () { value(node.value); });
      else if (value === true) node.setAttribute(name, '');
      else if (value !== false && value !== undefined) node.setAttribute(name, value);
    });
    [].concat(children === undefined ? [] : children).forEach(function (child) {
      if (child === '' || child === null || child === undefined || child === false) return;
      node.appendChild(typeof child === 'string' ? document.createTextNode(child) : child);
    });
    return node;
  }

  function draw(tag, settings, text) {
    var node = document.createElementNS('http://www.w3.org/2000/svg', tag);
    Object.keys(settings).forEach(function (name) { node.setAttribute(name, settings[name]); });
    if (text !== undefined) node.textContent = text;
    return node;
  }

  function button(words, tap, more) {
    return el('button', Object.assign({ type: 'button', tap: tap }, more || {}), words);
  }

  function choice(words, chosen, tap, kind) {
    return button((chosen ? '✓ ' : '') + words, tap, { class: 'choice' + (chosen ? ' chosen' : '') + (kind ? ' ' + kind : ''), 'aria-pressed': chosen ? 'true' : 'false' });
  }

  function field(words, value, typed, more) {
    var input = el('input', Object.assign({ value: value, typed: typed, autocomplete: 'off' }, more || {}));
    return el('label', { class: 'field' }, [el('span', {}, words), input]);
  }

  function number(text) {
    var tidy = String(text).trim().replace(',', '.');
    return /^(\d+\.?\d*|\.\d+)$/.test(tidy) ? Number(tidy) : undefined;
  }

  /** A number as the language reads it: no leading zeros, no bare point. */
  function plain(text) {
    var tidy = String(text).trim().replace(',', '.');
    if (tidy.charAt(0) === '.') tidy = '0' + tidy;
    tidy = tidy.replace(/^0+(?=\d)/, '');
    return tidy.replace(/\.$/, '');
  }

  function quoted(text) {
    var clean = '';
    String(text).split('').forEach(function (letter) {
      var code = letter.charCodeAt(0);
      clean += letter === '"' ? "'" : code < 32 || code === 127 || code === 0x2028 || code === 0x2029 ? ' ' : letter;
    });
    return '"' + clean.trim().slice(0, 300) + '"';
  }

  /** Entries in the browser's storage, so that a dead battery loses nothing; says so where the browser keeps nothing. */
  function storeFor(key) {
    var works = true;
    return {
      load: function () {
        try { return JSON.parse(localStorage.getItem(key) || '{}'); } catch (problem) { works = false; return {}; }
      },
      keep: function (state) {
        try { localStorage.setItem(key, JSON.stringify(state)); works = true; } catch (problem) { works = false; }
      },
      drop: function () {
        try { localStorage.removeItem(key); } catch (problem) { works = false; }
      },
      words: function () {
        return works ? 'Kept on this phone.' : 'NOT KEPT: this browser stores nothing. Copy the text before you close.';
      }
    };
  }

  /** The finished text with buttons to copy, share and save it. */
  function giveBack(text, name) {
    var box = el('textarea', { id: 'block', readonly: true, rows: String(Math.min(16, text.split('\n').length)), 'aria-label': 'The text for the records' });
    box.value = text;
    var told = el('p', { class: 'count', role: 'status', id: 'told' });
    function byHand() {
      box.focus();
      box.select();
      document.execCommand('copy');
      told.textContent = 'Copied.';
    }
    function copy() {
      if (navigator.clipboard && navigator.clipboard.writeText) navigator.clipboard.writeText(text).then(function () { told.textContent = 'Copied.'; }, byHand);
      else byHand();
    }
    function save() {
      var address = URL.createObjectURL(new Blob([text], { type: 'text/plain' }));
      var link = el('a', { href: address, download: name });
      document.body.appendChild(link);
      link.click();
      link.remove();
      setTimeout(function () { URL.revokeObjectURL(address); }, 10000);
      told.textContent = 'Saved as ' + name + '.';
    }
    return el('div', {}, [
      box,
      button('Copy', copy, { class: 'main', id: 'copy' }),
      navigator.share ? button('Share', function () { navigator.share({ title: name, text: text }).catch(function () {}); }) : '',
      button('Save as a file', save, { id: 'save' }),
      told
    ]);
  }

  function today() {
    var now = new Date();
    var two = function (n) { return (n < 10 ? '0' : '') + n; };
    return now.getFullYear() + '-' + two(now.getMonth() + 1) + '-' + two(now.getDate());
  }

`;
