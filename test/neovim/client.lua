-- Opens a file in Neovim with the language server attached, and writes down what Neovim's own client makes of it:
-- its diagnostics, a hover, and what a code action leaves of the file.
-- Words come as JSON in PLUMBLINE_ASKED; the answer goes as JSON to the file that it names.
local asked = vim.json.decode(vim.env.PLUMBLINE_ASKED)
local told = {}

local function wait(what, check)
  if not vim.wait(asked.patience, check, 20) then error('Neovim waited in vain for ' .. what) end
end

-- The 0-based line and column of the first `word` from the text `from` on.
local function place(from, word)
  local lines = vim.api.nvim_buf_get_lines(0, 0, -1, false)
  for row, line in ipairs(lines) do
    if line:find(from, 1, true) then return row - 1, line:find(word, line:find(from, 1, true), true) - 1 end
  end
  error(from .. ' is not in the file')
end

local function request(client, method, params)
  local answer, failed = client.request_sync(method, params, asked.patience, 0)
  if failed or not answer or answer.err then error(method .. ': ' .. vim.inspect(failed or answer)) end
  return answer.result
end

local function mend(client)
  local row, column = place(asked.fix.from, asked.fix.word)
  vim.api.nvim_win_set_cursor(0, { row + 1, column })
  local params = vim.lsp.util.make_range_params(0, client.offset_encoding)
  params.context = { diagnostics = vim.lsp.diagnostic.get_line_diagnostics(0, row) }
  local actions = request(client, 'textDocument/codeAction', params) or {}
  told.actions = vim.tbl_map(function(action) return action.title end, actions)
  for _, action in ipairs(actions) do
    if action.title:find(asked.fix.title, 1, true) then
      vim.lsp.util.apply_workspace_edit(action.edit, client.offset_encoding)
      break
    end
  end
  wait('the problem to go', function() return #vim.diagnostic.get(0) < asked.expected end)
  told.left = #vim.diagnostic.get(0)
  vim.cmd('write')
end

local function run()
  vim.cmd('edit ' .. vim.fn.fnameescape(asked.file))
  local started = vim.loop.hrtime()
  local folder = vim.fn.fnamemodify(asked.file, ':p:h')
  local id = vim.lsp.start_client({ name = 'plumbline', cmd = asked.command, root_dir = folder })
  vim.lsp.buf_attach_client(0, id)
  local client = vim.lsp.get_client_by_id(id)

  wait('diagnostics', function() return #vim.diagnostic.get(0) >= asked.expected end)
  told.milliseconds = math.floor((vim.loop.hrtime() - started) / 1e6)
  told.diagnostics = vim.tbl_map(function(found)
    local line = vim.api.nvim_buf_get_lines(0, found.lnum, found.lnum + 1, false)[1]
    local severity = ({ 'error', 'warning', 'information', 'hint' })[found.severity]
    return { rule = found.code, severity = severity, words = line:sub(found.col + 1, found.end_col) }
  end, vim.diagnostic.get(0))

  local row, column = place(asked.hover.from, asked.hover.word)
  vim.api.nvim_win_set_cursor(0, { row + 1, column })
  local params = vim.lsp.util.make_position_params(0, client.offset_encoding)
  told.hover = request(client, 'textDocument/hover', params).contents.value

  if asked.fix then mend(client) end

  client.stop()
  wait('the server to end', function() return client.is_stopped() end)
end

local ok, failure = pcall(run)
told.failure = not ok and tostring(failure) or nil
local file = assert(io.open(asked.answer, 'w'))
file:write(vim.json.encode(told))
file:close()
vim.cmd('qall!')
